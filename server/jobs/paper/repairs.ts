import { fillAll, fillingsOf } from '../../knowledge/instantiate/words.ts'
import { movingOff } from '../phone/home/under-way.ts'
import { mendOf } from '../phone/mending/told.ts'
import type { Repair } from '../record/repairs.ts'
import type { Standing } from '../standing/standing.ts'
import { together } from '../standing/way/state.ts'
import { proofSteps } from '../verdict/proof.ts'
import type { Fact } from '../words/fact.ts'
import { howItFailed, repairedNames } from '../words/names.ts'
import { dateAndTime, minutes, sentence, upperFirst } from '../words/sentences.ts'
import type { ProofOnSheet, SheetRepair } from './view.ts'

/** What was repaired, in order, and what came of each. */
export function presentSheetRepairs(input: Standing): SheetRepair[] {
  const { folded, kase } = input
  return folded.repairs.map((repair) => ({
    parts: upperFirst(repairedNames(kase, [repair])),
    when: dateAndTime(repair.at),
    facts: [...toldOf(input, repair), ...factsOf(repair, (fault) => howItFailed(kase, fault))],
    came: cameOf(repair),
  }))
}

/** What an owner was told by phone to put right, in the words of the answer that told of it: nobody else saw what was done. */
function toldOf({ kase, folded, judged }: Standing, { byPhone, parts }: Repair): Fact[] {
  if (!byPhone) return []
  const told = [...folded.readings]
    .filter(([, { conditions }]) => conditions.who === 'owner')
    .flatMap(([check]) => mendOf({ kase, judged }, check) ?? [])
  const mend = told.findLast((each) => parts.some((part) => each.parts.includes(part)))
  return mend ? [{ label: 'Its owner was told', value: sentence(mend.phone) }] : []
}

function factsOf(repair: Repair, faultWords: (fault: string) => string): Fact[] {
  const { fault, note, price, minutes: spent, read } = repair
  return [
    ...(fault ? [{ label: 'How it failed', value: faultWords(fault) }] : []),
    ...(price ? [{ label: 'Price', value: price }] : []),
    ...(spent === undefined ? [] : [{ label: 'Work', value: minutes(spent) }]),
    ...(note ? [{ label: 'Note', value: sentence(note) }] : []),
    ...(read ? [{ label: 'Read at the proof', value: sentence(read) }] : []),
  ]
}

function cameOf({ outcome, provedAt }: Repair): string {
  const when = provedAt ? ` on ${dateAndTime(provedAt)}` : ''
  switch (outcome) {
    case 'gone':
      return `Tried${when}: the complaint is gone.`
    case 'still there':
      return `Tried${when}: the complaint was still there.`
    case null:
      return 'Not tried yet.'
  }
}

/** How the last repair was proved, or how what is named is to be; nothing while there is neither. */
export function presentProof(input: Standing): ProofOnSheet | undefined {
  const { folded, walk } = input
  const last = folded.repairs.at(-1)
  const isPast = last === undefined || last.outcome === 'still there'
  const named = walk.step.kind === 'named' ? walk.step.parts : []
  const parts = isPast ? named : last.parts
  if (isPast && parts.length === 0) return undefined
  if (!isPast && last.byPhone) return ownersProof(input, last)
  return {
    says: proofSays(isPast ? undefined : last),
    // What is still apart has a list of its own on the sheet.
    steps: proofSteps({ ...input, asItStands: together }, parts),
  }
}

/** What an owner put right by phone is tried by them, with no meter: as it was said to them. */
function ownersProof(input: Standing, { outcome }: Repair): ProofOnSheet | undefined {
  const { kase, knowledge } = input
  const { trial } = knowledge.home
  const does = kase.complaint.home.trial ?? trial.do
  if (does.length === 0) return undefined
  const filled = (says: readonly string[]) => fillAll(says, fillingsOf(kase.machine))
  return {
    says:
      outcome === 'gone'
        ? 'Its owner put it right by phone, and says that the complaint is gone. It was tried so.'
        : 'Its owner put it right by phone, and has yet to say whether it stays away. It is tried so.',
    steps: [...filled(does), ...movingOff(input), ...filled(trial.after)].map(sentence),
  }
}

/** What was read at the proof stands with what came of it. */
const readAt = ({ read }: Repair): string =>
  read === undefined
    ? 'no reading of it was written down.'
    : 'what was read stands with the repair.'

function proofSays(repair: Repair | undefined): string {
  if (repair?.outcome === 'gone')
    return `Whoever repaired it wrote down that the complaint is gone. This is how it is to be proved; ${readAt(repair)}`
  return repair === undefined
    ? 'Once it is repaired, prove it as follows.'
    : 'Repaired, and still to be proved as follows.'
}
