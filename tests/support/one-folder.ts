import type { TestProject } from 'vitest/node'
import { newFolder, removeFolder } from './folder.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** A folder for what tests make once and share. */
    shared: string
  }
}

/** A folder for all tests of a project, gone after the last. */
export default function setup({ provide }: TestProject): () => void {
  const folder = newFolder()
  provide('shared', folder)
  return () => removeFolder(folder)
}
