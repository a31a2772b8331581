import { statfsSync } from 'node:fs'

/** Bytes; copies of the trees, and of what is built from them, are some ten million each. */
const roomWanted = 2 ** 30

/** A folder whose files are only memory, where there is room in one: what is gone after a test need not wait for a disk. */
export const memory = ['/dev/shm'].find((folder) => roomIn(folder) > roomWanted)

function roomIn(folder: string): number {
  try {
    const { bavail, bsize } = statfsSync(folder)
    return bavail * bsize
  } catch {
    return 0
  }
}
