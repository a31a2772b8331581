import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { memory } from './memory.ts'

/** An empty folder that is gone after the test. */
export function emptyFolder(): string {
  const folder = newFolder()
  onTestFinished(() => removeFolder(folder))
  return folder
}

/** The same for whoever removes it later. */
export const newFolder = (): string => mkdtempSync(join(memory ?? tmpdir(), 'coilhound-'))

export const removeFolder = (folder: string): void =>
  rmSync(folder, { recursive: true, force: true })
