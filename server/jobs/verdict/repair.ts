import type { Step } from '../../diagnosis/model/walk.ts'
import type { Standing } from '../standing/standing.ts'
import { cautionsOfTheJob } from '../words/cautions.ts'
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
        { name: 'choice', value: 'gone', says: 'Proved: the complaint is gone' },
        { name: 'choice', value: 'still-there', says: 'Still there: walk on' },
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
  const repairs = repairable(walk.step)
  if (repairs.length === 0) return undefined
  const written = {
    title: 'When it is repaired',
    says: 'Write it down here; the page then says how to prove it.',
    cautions: [],
    steps: [],
    action: `/jobs/${job.id}/repairs`,
  }
  const says = (parts: readonly string[]) => `Repaired: ${partNames(kase, parts)}`
  if (walk.step.kind === 'named') {
    const { parts } = walk.step
    const button = { name: 'choice', value: 'repaired', says: says(parts) } as const
    return { ...written, parts: parts.join('+'), buttons: [button] }
  }
  const buttons = repairs.map((parts) => ({
    name: 'parts' as const,
    value: parts.join('+'),
    says: says(parts),
  }))
  return { ...written, parts: '', buttons }
}

/** Of a group, the likeliest: whoever mends another part tells it by its proof. */
const mostOfAGroup = 4

/** The repairs that may be written down after this step: the parts named, or each of a group alone. */
export function repairable(step: Step): readonly (readonly string[])[] {
  if (step.kind === 'named') return [step.parts]
  if (step.kind !== 'cannotSeparate') return []
  return step.group.flatMap(({ part }) => (part === null ? [] : [[part]])).slice(0, mostOfAGroup)
}

/** Cautions of the proof of these parts and of the complaint, beside those of the conditions. */
function cautionsFor(input: Standing, parts: readonly string[]): RepairView['cautions'] {
  const cards = parts.flatMap((part) => input.kase.parts.get(part) ?? [])
  return cautionsOf(input, cards, cautionsOfTheJob(input))
}
