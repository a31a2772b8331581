import { createHash } from 'node:crypto'
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { quantities } from '../../measure/reading/quantities.ts'
import type { Knowledge } from '../knowledge.ts'
import type { readYaml } from '../yaml-file.ts'
import { fingerprint } from './fingerprint.ts'
import { fromText, toText } from './text.ts'

/**
 * The knowledge below a folder, as `loadKnowledge` gives it. What an earlier start read and found sound
 * is taken from a file, as long as neither the trees nor the code that reads them have changed since:
 * reading YAML is most of what a start takes.
 *
 * @param file made anew where it does not fit; where it cannot be written, nothing is kept
 * @param read how one file is read, as for `loadKnowledge`
 * @throws KnowledgeProblems as `loadKnowledge` does
 */
export async function keptKnowledge(
  folder: string,
  file: string,
  read?: typeof readYaml,
): Promise<Knowledge> {
  const before = fingerprint(folder)
  const kept = before === null ? null : readKept(file, before)
  if (kept !== null) return { ...fromText(kept), quantities }

  // Neither it nor the libraries that it needs are loaded where there is nothing for them to do.
  const { loadKnowledge } = await import('../load.ts')
  const knowledge = loadKnowledge(folder, quantities, read)
  // What changes while it is read may have been read before or after.
  if (before !== null && before === fingerprint(folder)) keep(file, before, toText(knowledge))
  return knowledge
}

/** What the file holds; null where it is not there, made from something else, or damaged. */
function readKept(file: string, from: string): string | null {
  const whole = unlessDenied(() => readFileSync(file, 'utf8')) ?? ''
  const end = whole.indexOf('\n')
  const text = whole.slice(end + 1)
  return whole.slice(0, end) === sealOf(from, text) ? text : null
}

/** Under another name first: whoever reads meanwhile finds the old file or the new one. */
function keep(file: string, from: string, text: string): void {
  const unfinished = `${file}.${process.pid}`
  unlessDenied(() => {
    writeFileSync(unfinished, `${sealOf(from, text)}\n${text}`)
    renameSync(unfinished, file)
  })
  unlessDenied(() => rmSync(unfinished, { force: true }))
}

/** One hash for what was read and what came of it: neither can change without the other. */
const sealOf = (from: string, text: string): string =>
  createHash('sha256').update(`${from}\n${text}`).digest('hex')

/** Null where the system does not let us: then there is nothing kept, and that is all. */
function unlessDenied<T>(act: () => T): T | null {
  try {
    return act()
  } catch (error) {
    if (error instanceof Error && 'code' in error) return null
    throw error
  }
}
