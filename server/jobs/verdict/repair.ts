import type { JobInput } from '../page/present.ts'
import { listed, lowerFirst, sentence, the } from '../words/sentences.ts'
import type { RepairView } from './view.ts'

/**
 * What comes after a verdict: write down the repair, prove it, and be done or walk on. Nothing while
 * there is neither a named part nor a repair.
 */
export function presentRepair({ job, folded, kase, walk }: JobInput): RepairView | undefined {
  const last = folded.repairs.at(-1)
  if (last?.outcome === null) {
    const proofs = last.parts.map((part) => kase.parts.get(part)?.prove ?? '').filter(Boolean)
    return {
      title: 'Prove the repair',
      says: `Repaired: ${namesOf(kase, last.parts)}.`,
      steps: [
        ...proofs.map(sentence),
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
      says: `Repaired and proved: ${namesOf(kase, all)}. The complaint is gone.`,
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
    buttons: [{ value: 'repaired', says: `Repaired: ${namesOf(kase, parts)}` }],
  }
}

/** "the start exciter winding and the left plug lead" */
export function namesOf(kase: JobInput['kase'], parts: readonly string[]): string {
  return listed(parts.map((part) => the(kase.parts.get(part)?.name ?? part)))
}
