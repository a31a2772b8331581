import type { Database } from 'better-sqlite3'

/** What is acknowledged must survive a pulled plug: WAL alone keeps that only with FULL. */
export function makeDurable(file: Database): void {
  // Before the others: the first of them may already meet another process that holds the file.
  file.pragma('busy_timeout = 5000')
  file.pragma('journal_mode = WAL')
  file.pragma('synchronous = FULL')
  file.pragma('foreign_keys = ON')
  // A file that can only be read opens without complaint; better to hear of it now than at the first job.
  file.exec('BEGIN; CREATE TABLE written (at); ROLLBACK')
}
