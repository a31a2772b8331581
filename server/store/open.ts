import { openDatabase } from './database.ts'
import { JobRecords } from './jobs.ts'
import { recognised } from './recognise.ts'

/** Everything that is kept between starts. */
export interface Store {
  readonly jobs: JobRecords
  close(): Promise<void>
}

/**
 * Opens what is kept in the folder.
 * @throws StoreTrouble where it cannot be read and written.
 */
export async function openStore(folder: string): Promise<Store> {
  const database = await openDatabase(folder).catch((problem) => {
    throw recognised(problem)
  })
  return {
    jobs: new JobRecords(database),
    close: () => database.destroy(),
  }
}
