import type { DatabaseSyncInstance } from '@photostructure/sqlite'

/** What is acknowledged must survive a pulled plug: WAL alone keeps that only with FULL. */
export function makeDurable(file: DatabaseSyncInstance): void {
  // SQLite would wait without letting anything else run, so the waiting is done outside of it.
  file.exec('PRAGMA busy_timeout = 0')
  file.exec('PRAGMA journal_mode = WAL')
  file.exec('PRAGMA synchronous = FULL')
  file.exec('PRAGMA foreign_keys = ON')
  // A file that can only be read opens without complaint; better to hear of it now than at the first job.
  file.exec('BEGIN; CREATE TABLE written (at); ROLLBACK')
}
