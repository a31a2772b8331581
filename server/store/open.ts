import { join } from 'node:path'
import { accessTo } from './access.ts'
import { openDatabase } from './database.ts'
import { JobRecords } from './jobs.ts'
import { patiently } from './patience.ts'
import { PhotoRecords } from './photos/records.ts'
import { PracticeRecords } from './practice.ts'
import { sameFiles } from './same-files.ts'

/** Everything that is kept between starts. */
export interface Store {
  readonly jobs: JobRecords
  readonly practice: PracticeRecords
  readonly photos: PhotoRecords
  /** The path of the file, where there was nothing in it until now. */
  readonly madeNew?: string
  close(): Promise<void>
}

/**
 * Opens what is kept in the folder.
 * @throws StoreTrouble where it cannot be read and written, DriverMissing where nothing can.
 */
export async function openStore(folder: string): Promise<Store> {
  const path = join(folder, 'coilhound.sqlite')
  const { database, isNew } = await patiently(() => openDatabase(folder, path))
  const access = accessTo(database, sameFiles(path))
  return {
    jobs: new JobRecords(access),
    practice: new PracticeRecords(access),
    photos: new PhotoRecords(access),
    ...(isNew && { madeNew: path }),
    close: access.close,
  }
}
