import type { FastifyInstance } from 'fastify'
import { checksThatSaw, checksThatSawElsewhere } from '../../diagnosis/belief/after-repair.ts'
import { textOf } from '../../web/fields.ts'
import { proofAgain, readProof } from '../posts/proof-form.ts'
import { readRepair, repairFormFrom } from '../posts/repair-form.ts'
import type { JobParts } from '../record/parts.ts'
import { canBeUnproved, type Repair, stands } from '../record/repairs.ts'
import { type Asked, notListed, type RepairForm } from '../standing/asked.ts'
import type { FoundJob } from '../standing/find.ts'
import { keptStanding } from '../standing/kept.ts'
import { offersOnlyElse, repairable } from '../verdict/repairable.ts'
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
  takes(app, parts, 'proofs', (body, found) => proofOf(parts, body, found), { again: proofAgain })
  takes(app, parts, 'repair-withdrawals', (_, { folded }) =>
    stands(folded.repairs.at(-1)) ? { kind: 'repair withdrawn' } : nothingToTakeBack,
  )
}

const nothingToTakeBack =
  'There is no repair to take back: none is written down, or the last one did not help.'

const nothingToUnsay = 'Something was written down since: what came of the repair stands.'

function proofOf(parts: JobParts, body: unknown, found: FoundJob): ReturnType<Meaning> {
  const { folded, kase, job } = found
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
  const reopened = checksOf(parts, found, repair).filter(
    (check) => kase.checks.get(check)?.asked !== true,
  )
  return { kind: 'proved', gone, reopened, ...written }
}

/** The checks whose readings were perhaps of what was repaired. */
function checksOf(parts: JobParts, found: FoundJob, { parts: repaired, cause }: Repair): string[] {
  if (cause === undefined) return checksThatSaw(found.kase.model, repaired)
  const { kase, evidence } = keptStanding(parts, found)
  return checksThatSawElsewhere(kase.model, evidence)
}

/**
 * Whoever wrote down one part, where the page names another or several, gets the form of that part back, and so does
 * whoever wrote down what is none of them.
 */
function seenIn(parts: JobParts, found: FoundJob, { parts: part }: RepairForm): Asked {
  if (part !== notListed && !found.kase.parts.has(part)) return {}
  const { step } = keptStanding(parts, found).walk
  if (part === notListed) return offersOnlyElse(step) ? {} : { found: part }
  const offered = repairable(step)
  return offered.length === 1 && offered[0]?.join('+') === part ? {} : { found: part }
}
