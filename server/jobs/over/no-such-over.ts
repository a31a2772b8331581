import type { ErrorPage } from '../../web/errors.ts'

/** What to say where a job is no check-over. */
export const noSuchOver: Omit<ErrorPage, 'kept' | 'wayOn'> = {
  status: 404,
  title: 'No such check-over',
  says: 'There is no check-over with this number.',
}
