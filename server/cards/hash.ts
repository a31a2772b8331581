import { createHash } from 'node:crypto'
import { toText } from '../knowledge/kept/text.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'

const kept = new WeakMap<Knowledge, string>()

/** What tells one state of the knowledge from another: a hash of all of it, and no clock. */
export function hashOf(knowledge: Knowledge): string {
  const known =
    kept.get(knowledge) ?? createHash('sha256').update(toText(knowledge)).digest('hex').slice(0, 10)
  kept.set(knowledge, known)
  return known
}
