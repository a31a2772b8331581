import type { Standing } from '../standing/standing.ts'
import { byGravity, shownCautions } from '../words/cautions.ts'
import { partNames } from '../words/names.ts'
import { cautionsOf } from './named.ts'
import { proofSteps } from './proof.ts'
import type { RepairView } from './view.ts'

/**
 * What comes after a verdict: write down the repair, prove it, and be done or walk on. Nothing while
 * there is neither a named part nor a repair.
 */
export function presentRepair(input: Standing): RepairView | undefined {
  const { job, folded, kase, walk } = input
  const last = folded.repairs.at(-1)
  if (last?.outcome === null) {
    return {
      title: 'Prove the repair',
      says: `Repaired: ${partNames(kase, last.parts)}.`,
      cautions: cautionsFor(input, last.parts),
      steps: proofSteps(input, last.parts),
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
      cautions: [],
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
    cautions: [],
    steps: [],
    action: `/jobs/${job.id}/repairs`,
    parts: parts.join('+'),
    buttons: [{ value: 'repaired', says: `Repaired: ${partNames(kase, parts)}` }],
  }
}

/** Cautions of the proof of these parts and of the complaint, beside those of the conditions. */
function cautionsFor(input: Standing, parts: readonly string[]): RepairView['cautions'] {
  const cards = parts.flatMap((part) => input.kase.parts.get(part) ?? [])
  const own = cautionsOf(input, cards)
  const always = shownCautions(input.knowledge, input.folded.opened.conditions)
  return byGravity([...own, ...always.filter(({ id }) => !own.some((each) => each.id === id))])
}
