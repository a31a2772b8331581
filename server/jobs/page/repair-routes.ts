import type { FastifyInstance } from 'fastify'
import { checksThatSaw } from '../../diagnosis/belief/after-repair.ts'
import { textOf } from '../../web/fields.ts'
import { proofAgain, readProof } from '../posts/proof-form.ts'
import { readRepair, repairFormFrom } from '../posts/repair-form.ts'
import type { JobParts } from '../record/parts.ts'
import { canBeUnproved, stands } from '../record/repairs.ts'
import type { Asked, RepairForm } from '../standing/asked.ts'
import type { FoundJob } from '../standing/find.ts'
import { keptStanding } from '../standing/kept.ts'
import { repairable } from '../verdict/repair.ts'
import { type Meaning, takes } from './takes.ts'

/** What was repaired, whether the complaint is gone, and that it was a mistake: `POST /jobs/:id/repairs` and the like. */
export async function repairRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  const again = (body: unknown, found: FoundJob) => {
    const form = repairFormFrom(body)
    return { ...seenIn(parts, found, form), repairRefused: form }
  }
  takes(
    app,
    parts,
    'repairs',
    (body, found) => {
      const form = repairFormFrom(body)
      const read = readRepair(found.kase, form, parts.currency)
      if (read.ok) return { kind: 'repaired', ...read.repaired }
      const { problem } = read
      return { asked: { ...seenIn(parts, found, form), repairRefused: { ...form, problem } } }
    },
    { again },
  )
  takes(app, parts, 'proofs', proofOf, { again: proofAgain })
  takes(app, parts, 'repair-withdrawals', (_, { folded }) =>
    stands(folded.repairs.at(-1)) ? { kind: 'repair withdrawn' } : nothingToTakeBack,
  )
}

const nothingToTakeBack =
  'There is no repair to take back: none is written down, or the last one did not help.'

const nothingToUnsay = 'Something was written down since: what came of the repair stands.'

function proofOf(body: unknown, { folded, kase, job }: FoundJob): ReturnType<Meaning> {
  if (textOf(body, 'choice') === 'taken-back') {
    return canBeUnproved(job) ? { kind: 'proof withdrawn' } : nothingToUnsay
  }
  const repair = folded.repairs.at(-1)
  if (repair === undefined || repair.outcome !== null) {
    return 'There is no repair to prove: write one down first.'
  }
  const read = readProof(body)
  if (!read.ok) return { asked: read.asked }
  const { gone, written } = read
  if (gone) return { kind: 'proved', gone, reopened: [], ...written }
  // What an owner remembers does not change with a new part.
  const reopened = checksThatSaw(kase.model, repair.parts).filter(
    (check) => kase.checks.get(check)?.asked !== true,
  )
  return { kind: 'proved', gone, reopened, ...written }
}

/** Whoever wrote down one part, where the page names another or several, gets the form of that part back. */
function seenIn(parts: JobParts, found: FoundJob, { parts: part }: RepairForm): Asked {
  if (!found.kase.parts.has(part)) return {}
  const offered = repairable(keptStanding(parts, found).walk.step)
  return offered.length === 1 && offered[0]?.join('+') === part ? {} : { found: part }
}
