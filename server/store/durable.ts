import type { DatabaseSyncInstance } from '@photostructure/sqlite'

/** What is acknowledged must survive a pulled plug: WAL alone keeps that only with FULL. */
export function makeDurable(file: DatabaseSyncInstance): void {
  // Before the others: the first of them may already meet another process that holds the file.
  file.exec('PRAGMA busy_timeout = 5000')
  file.exec('PRAGMA journal_mode = WAL')
  file.exec('PRAGMA synchronous = FULL')
  file.exec('PRAGMA foreign_keys = ON')
  // A file that can only be read opens without complaint; better to hear of it now than at the first job.
  file.exec('BEGIN; CREATE TABLE written (at); ROLLBACK')
}
