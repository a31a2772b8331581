import { named } from '../../diagnosis/model/named.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Repair } from '../record/repairs.ts'
import { type Asked, notListed } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { fittedFirst, stillApart } from '../standing/still-apart.ts'
import { cautionsOfTheJob, noCautions } from '../words/cautions/cautions.ts'
import { asWritten, howItFailed, partNames, repairedNames, suspectName } from '../words/names.ts'
import {
  dateAndTime,
  lowerFirst,
  minutes as minutesWords,
  sentence,
  the,
  upperFirst,
} from '../words/sentences.ts'
import { cautionsOf } from './named.ts'
import { proofSteps } from './proof.ts'
import { holdsElse, offersOnlyElse, repairable } from './repairable.ts'
import type { RepairView } from './view.ts'
import { elseSays, elseWords, presentWritten, writtenElse } from './written.ts'

/**
 * What comes after a verdict: write down the repair, prove it, and be done or walk on. Nothing while
 * there is neither a named part nor a repair.
 */
export function presentRepair(input: Standing & Asked): RepairView | undefined {
  const { job, folded, kase, walk, found, proofRefused } = input
  const last = folded.repairs.at(-1)
  if (last?.outcome === null) {
    return {
      title: 'Prove the repair',
      says: `Repaired: ${repairedNames(kase, [last])}.`,
      cautions: cautionsFor(input, last.parts),
      steps: proofSteps(input, last.parts),
      action: `/jobs/${job.id}/proofs`,
      parts: '',
      withdraw: { action: takenBackAt(input), says: 'The repair counts no more' },
      proof: proofRefused ?? { read: '' },
      buttons: [
        { name: 'choice', value: 'gone', says: 'Proved: the complaint is gone' },
        { name: 'choice', value: 'still-there', says: 'Still there: walk on' },
      ],
    }
  }
  if (last?.outcome === 'gone') return presentDone(input)
  if (found === notListed) return presentElse(input)
  if (found !== undefined) return presentSeen(input, found)
  const repairs = repairable(walk.step)
  const isElseOnly = offersOnlyElse(walk.step)
  if (repairs.length === 0 && !isElseOnly) return undefined
  const offer = {
    title: 'When it is repaired',
    says: 'Write it down here; the page then says how to prove it.',
    cautions: noCautions,
    steps: [],
    action: `/jobs/${job.id}/repairs`,
  }
  if (isElseOnly) return { ...offer, says: elseSays, ...writtenElse(input) }
  if (walk.step.kind === 'named') {
    const { parts } = walk.step
    return {
      ...offer,
      parts: parts.join('+'),
      written: presentWritten(input, parts),
      buttons: [{ name: 'choice', value: 'repaired', says: repairedWords(input, parts) }],
    }
  }
  const buttons = repairs.map((parts) => ({
    name: 'parts' as const,
    value: parts.join('+'),
    says: repairedWords(input, parts),
  }))
  const orElse = holdsElse(walk.step) && {
    orElse: { href: `/jobs/${job.id}?found=${notListed}`, text: elseWords },
  }
  return { ...offer, parts: '', written: presentWritten(input, []), buttons, ...orElse }
}

/** Where it is sent that the last repair was written down by mistake. */
export const takenBackAt = ({ job }: Pick<Standing, 'job'>) => `/jobs/${job.id}/repair-withdrawals`

const repairedWords = ({ kase }: Standing, parts: readonly string[]) =>
  `Repaired: ${partNames(kase, parts)}`

/** Something that is not listed was found: where to write it down, whatever the verdict. */
function presentElse(input: Standing & Asked): RepairView {
  return {
    title: `You found it: ${suspectName(input.kase, null)}`,
    says: 'Put it right, write down what it was, and the page says how to prove it.',
    cautions: cautionsFor(input, []),
    steps: stillApart(input),
    action: `/jobs/${input.job.id}/repairs`,
    ...writtenElse(input),
  }
}

/** What was seen with one's own eyes needs no verdict: how to repair it, and where to write it down. */
function presentSeen(input: Standing & Asked, part: string): RepairView {
  const { job, kase } = input
  const card = named(kase.parts, part)
  const fitted = fittedFirst(input)
  return {
    title: `You found it: ${the(card.name)}`,
    says: 'Repair it as said here, write down what it was, and the page says how to prove it.',
    cautions: cautionsFor(input, [part]),
    steps: [
      ...fitted,
      ...(card.where ? [sentence(`It is ${lowerFirst(card.where)}`)] : []),
      sentence(card.repair),
      ...stillApart(input).filter((says) => !fitted.includes(says)),
    ],
    action: `/jobs/${job.id}/repairs`,
    parts: part,
    written: presentWritten(input, [part]),
    buttons: [{ name: 'choice', value: 'repaired', says: repairedWords(input, [part]) }],
  }
}

/** "Repaired: the tether switch. Proved on 7 May 2031, 14:05." and what was written down of it. */
function presentDone(input: Standing): RepairView {
  const { folded, kase } = input
  const byPhone = folded.repairs.at(-1)?.byPhone === true
  return {
    title: byPhone ? 'Put right by phone' : 'Repaired and proved',
    says: byPhone ? 'Its owner says that the complaint is gone.' : 'The complaint is gone.',
    cautions: noCautions,
    steps: folded.repairs.map((repair) => doneWords(kase, repair)),
    action: '',
    parts: '',
    withdraw: { action: takenBackAt(input), says: 'Repair and proof count no more' },
    buttons: [],
  }
}

function doneWords(kase: Case, { parts, cause, outcome, provedAt, ...written }: Repair): string {
  const done =
    cause === undefined
      ? `${upperFirst(partNames(kase, parts))} repaired`
      : `Something else, ${asWritten(cause)}, put right`
  const proved = outcome === 'gone' ? 'proved' : 'the complaint was still there'
  const { fault, note, price, minutes, read } = written
  return [
    `${done}; ${proved}${provedAt ? ` ${dateAndTime(provedAt)}` : ''}.`,
    ...(fault ? [howItFailed(kase, fault)] : []),
    ...(note ? [sentence(note)] : []),
    ...(read ? [sentence(`Read at the proof: ${read}`)] : []),
    ...(price || minutes !== undefined
      ? [
          sentence(
            [
              price ? `Price ${price}` : '',
              minutes === undefined ? '' : `${minutesWords(minutes)} of work`,
            ]
              .filter(Boolean)
              .join(', '),
          ),
        ]
      : []),
  ].join(' ')
}

/** Cautions of the proof of these parts and of the complaint, beside those of the conditions. */
function cautionsFor(input: Standing, parts: readonly string[]): RepairView['cautions'] {
  const cards = parts.flatMap((part) => input.kase.parts.get(part) ?? [])
  return cautionsOf(input, cards, cautionsOfTheJob(input))
}
