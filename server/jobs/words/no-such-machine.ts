import type { ErrorPage } from '../../web/errors.ts'

/** What to say at an address that names no machine. */
export const noSuchMachine: Omit<ErrorPage, 'kept'> = {
  status: 404,
  title: 'No such machine',
  says: 'There is no machine of that name here.',
  wayOn: [{ href: '/', text: 'Find the machine' }],
}
