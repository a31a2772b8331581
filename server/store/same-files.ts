import { statSync } from 'node:fs'

/** SQLite's own files beside the database: what was written last, and who reads it. */
const companions = ['-wal', '-shm']

/**
 * Remembers which files stand at the path of a database that was just opened. An open file can be written
 * even after it was deleted, but nobody will ever find it again. What is returned says what has become of
 * one of them, and nothing while all are the ones that were opened.
 */
export function sameFiles(path: string): () => string | undefined {
  const opened = ['', ...companions].map((end) => ({ name: path + end, file: fileAt(path + end) }))
  return () => {
    const other = opened.find(({ name, file }) => fileAt(name) !== file)
    return other && whatBecameOf(other.name)
  }
}

/** Device and inode: no other file has both while this one is open. */
function fileAt(name: string): string | undefined {
  const found = statSync(name, { bigint: true, throwIfNoEntry: false })
  return found && `${found.dev}/${found.ino}`
}

function whatBecameOf(name: string): string {
  return fileAt(name) === undefined ? `${name} is gone` : `${name} is another file than was opened`
}
