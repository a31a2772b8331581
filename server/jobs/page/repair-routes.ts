import type { FastifyInstance } from 'fastify'
import { checksThatSaw } from '../../diagnosis/belief/after-repair.ts'
import { textOf } from '../../web/fields.ts'
import type { JobParts } from '../record/parts.ts'
import { keptStanding } from '../standing/kept.ts'
import { repairable } from '../verdict/repair.ts'
import { takes } from './takes.ts'

/** What was repaired, and whether the complaint is gone: `POST /jobs/:id/repairs` and `/proofs`. */
export async function repairRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  takes(app, parts, 'repairs', (body, found) => {
    const { step } = keptStanding(parts, found).walk
    const named = textOf(body, 'parts')
    const repaired = repairable(step).find((each) => each.join('+') === named)
    if (repaired === undefined) {
      return 'The verdict is another one by now; look at it before you write down a repair.'
    }
    return { kind: 'repaired', parts: repaired }
  })
  takes(app, parts, 'proofs', (body, found) => {
    const repair = found.folded.repairs.at(-1)
    if (repair === undefined || repair.outcome !== null) {
      return 'There is no repair to prove: write one down first.'
    }
    const choice = textOf(body, 'choice')
    if (choice === 'gone') return { kind: 'proved', gone: true, reopened: [] }
    if (choice !== 'still-there') return 'Choose whether the complaint is gone or still there.'
    const reopened = checksThatSaw(found.kase.model, repair.parts)
    return { kind: 'proved', gone: false, reopened }
  })
}
