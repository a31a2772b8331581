import type { Standing } from '../standing/standing.ts'
import { partNames } from '../words/names.ts'
import { lowerFirst, sentence } from '../words/sentences.ts'
import { stillApart } from './still-apart.ts'
import type { RepairView } from './view.ts'

/**
 * What comes after a verdict: write down the repair, prove it, and be done or walk on. Nothing while
 * there is neither a named part nor a repair.
 */
export function presentRepair({ job, folded, kase, walk }: Standing): RepairView | undefined {
  const last = folded.repairs.at(-1)
  if (last?.outcome === null) {
    const proofs = last.parts.map((part) => kase.parts.get(part)?.prove ?? '').filter(Boolean)
    return {
      title: 'Prove the repair',
      says: `Repaired: ${partNames(kase, last.parts)}.`,
      steps: [
        ...stillApart({ job, kase }),
        ...proofs.map(sentence),
        walkRound,
        ...(kase.machine.stop ? [sentence(kase.machine.stop.try)] : []),
        `Then the complaint itself: ${lowerFirst(sentence(kase.complaint.prove))}`,
      ],
      action: `/jobs/${job.id}/proofs`,
      parts: '',
      buttons: [
        { value: 'gone', says: 'Proved: the complaint is gone' },
        { value: 'still-there', says: 'Still there: walk on' },
      ],
    }
  }
  if (last?.outcome === 'gone') {
    const all = folded.repairs.flatMap(({ parts }) => parts)
    return {
      title: 'Done',
      says: `Repaired and proved: ${partNames(kase, all)}. The complaint is gone.`,
      steps: [],
      action: '',
      parts: '',
      buttons: [],
    }
  }
  if (walk.step.kind !== 'named') return undefined
  const { parts } = walk.step
  return {
    title: 'When it is repaired',
    says: `Write it down here; the page then says how to prove it.`,
    steps: [],
    action: `/jobs/${job.id}/repairs`,
    parts: parts.join('+'),
    buttons: [{ value: 'repaired', says: `Repaired: ${partNames(kase, parts)}` }],
  }
}

/** What the repair itself took apart, nobody wrote down. Common practice. */
const walkRound =
  'Walk round the machine once: every plug joined, every cover on, every ground tight, all leads clear of heat and belts.'
