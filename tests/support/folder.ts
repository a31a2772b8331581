import { mkdtempSync, rmSync, statfsSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'

/** An empty folder that is gone after the test. */
export function emptyFolder(): string {
  const folder = newFolder()
  onTestFinished(() => removeFolder(folder))
  return folder
}

/** The same for whoever removes it later. */
export const newFolder = (): string => mkdtempSync(join(quickest(), 'coilhound-'))

/** Where files are only memory, if there is room: what is gone after a test need not wait for a disk, twice. */
function quickest(): string {
  const memory = '/dev/shm'
  const { bavail, bsize } = existing(memory) ?? { bavail: 0, bsize: 0 }
  return bavail * bsize > roomWanted ? memory : tmpdir()
}

/** Bytes; copies of the trees and of what is built from them are some ten million. */
const roomWanted = 2 ** 30

function existing(folder: string) {
  try {
    return statfsSync(folder)
  } catch {
    return
  }
}

export const removeFolder = (folder: string): void =>
  rmSync(folder, { recursive: true, force: true })
