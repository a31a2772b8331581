import type { Case } from '../../server/knowledge/case.ts'
import { drawHidden } from '../../server/practice/seen/draw.ts'
import type { Hidden } from '../../server/practice/seen/hidden.ts'
import { asComplainedOf } from '../../server/practice/seen/severity.ts'
import { trueMachine } from '../../server/practice/world/machine.ts'
import { shippedKnowledge } from './knowledge.ts'

const drawn = new Map<string, Hidden>()
const hid = new Map<string, Hidden>()

/**
 * A shipped machine that hides this fault by itself, as badly as whoever complains has it. What else a seed draws, the
 * weather and the meter, is drawn once; each such machine is made once.
 */
export function hiding(kase: Case, fault: string, seed: number): Hidden {
  const name = [kase.machine.id, kase.complaint.id, fault, seed].join(' ')
  const known = hid.get(name)
  if (known !== undefined) return known
  const made = hidingAnyhow(kase, fault, seed)
  const hidden = { ...made, truth: asComplainedOf(made) }
  hid.set(name, hidden)
  return hidden
}

/** The same, as badly as it happens to be drawn. */
export function hidingAnyhow(kase: Case, fault: string, seed: number): Hidden {
  const cutSet = kase.model.cutSets.findIndex(
    ({ faults }) => faults.length === 1 && faults[0] === fault,
  )
  const { faults, parts } = kase.model.cutSets[cutSet]!
  const truth = trueMachine(shippedKnowledge(), kase, faults, seed)
  return { ...drawnOnce(kase, seed), seed, cutSet, faults, parts, truth }
}

/** As many weathers and meters as that are enough: to draw one draws a fault with it, which is most of the work. */
const weathers = 12

function drawnOnce(kase: Case, any: number): Hidden {
  const seed = any % weathers
  const name = [kase.machine.id, kase.complaint.id, seed].join(' ')
  const known = drawn.get(name) ?? drawHidden(shippedKnowledge(), kase, seed)
  drawn.set(name, known)
  return known
}
