import { closeSync, openSync, statSync, writeSync } from 'node:fs'

/** Writes nonsense over the middle of a file, as a failing disk might: its beginning and end stay. */
export function spoil(path: string): void {
  const { size } = statSync(path)
  const from = Math.floor(size / 8)
  const file = openSync(path, 'r+')
  writeSync(file, Buffer.alloc(size - 2 * from, 0xaa), 0, size - 2 * from, from)
  closeSync(file)
}
