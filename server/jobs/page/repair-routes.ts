import type { FastifyInstance } from 'fastify'
import { checksThatSaw } from '../../diagnosis/belief/after-repair.ts'
import { textOf } from '../../web/fields.ts'
import { readRepair, repairFormFrom } from '../posts/repair-form.ts'
import type { JobParts } from '../record/parts.ts'
import type { FoundJob } from '../standing/find.ts'
import { takes } from './takes.ts'

/** What was repaired, and whether the complaint is gone: `POST /jobs/:id/repairs` and `/proofs`. */
export async function repairRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  takes(app, parts, 'repairs', (body, found) => {
    const form = repairFormFrom(body)
    const read = readRepair(found.kase, form)
    if (read.ok) return { kind: 'repaired', ...read.repaired }
    const { field, sentence } = read
    return { asked: { ...seenIn(found, form.parts), repairRefused: { ...form, field, sentence } } }
  })
  takes(app, parts, 'proofs', (body, found) => {
    const repair = found.folded.repairs.at(-1)
    if (repair === undefined || repair.outcome !== null) {
      return 'There is no repair to prove: write one down first.'
    }
    const choice = textOf(body, 'choice')
    if (choice === 'gone') return { kind: 'proved', gone: true, reopened: [] }
    if (choice !== 'still-there') return 'Choose whether the complaint is gone or still there.'
    // What an owner remembers does not change with a new part.
    const reopened = checksThatSaw(found.kase.model, repair.parts).filter(
      (check) => found.kase.checks.get(check)?.asked !== true,
    )
    return { kind: 'proved', gone: false, reopened }
  })
}

/** Whoever wrote down another part than the one named has seen it, and gets its form back. */
const seenIn = ({ kase }: FoundJob, part: string) => (kase.parts.has(part) ? { found: part } : {})
