import type { Store } from '../../server/store/open.ts'

/** A store that has nothing but these few ways to answer, for jobs and photos alike: any other is a mistake of ours. */
export const brokenStore = (answers: object): Store => ({
  jobs: answers as never,
  photos: answers as never,
  practice: undefined as never,
  close: async () => {},
})
