import { numbered } from '../../diagnosis/model/named.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { between, drawn, happens, type Random, seeded, seedOf } from '../world/chance.ts'
import { trueMachine } from '../world/machine.ts'
import { drawMeter } from '../world/meter.ts'
import type { Hidden } from './hidden.ts'
import { asComplainedOf, sparksAllTheSame } from './severity.ts'

/** So many faults are drawn to find one that makes the complaint by the wiring of the machine as well. */
const draws = 5

/** A fault by base rate in a machine of this case. */
export function drawHidden(knowledge: Knowledge, kase: Case, seed: number): Hidden {
  const random = seeded(seedOf(seed, kase.machine.id, kase.complaint.id))
  let hidden = drawOnce(knowledge, kase, seed, random)
  for (let draw = 1; draw < draws && sparksAllTheSame(hidden); draw += 1) {
    hidden = drawOnce(knowledge, kase, seed, random)
  }
  return hidden
}

function drawOnce(knowledge: Knowledge, kase: Case, seed: number, random: Random): Hidden {
  const cutSet = drawCutSet(kase, random)
  const { faults, parts } = numbered(kase.model.cutSets, cutSet)
  const [meter = ''] = knowledge.meters.keys()
  const hidden: Hidden = {
    ...{ knowledge, kase, seed, cutSet, faults, parts },
    truth: trueMachine(knowledge, kase, faults, seed),
    air: drawAir(random),
    meter: drawMeter(knowledge, meter, random),
    leads: between(random, 0.1, 0.4),
  }
  return { ...hidden, truth: asComplainedOf(hidden) }
}

/** One part that has failed, where one alone makes the complaint; a cause outside the tree teaches nobody a part. */
function drawCutSet({ model: { cutSets } }: Case, random: Random): number {
  const sizes = cutSets.map(({ faults }) => faults.length).filter((size) => size > 0)
  const fewest = Math.min(...sizes)
  const weights = cutSets.map(({ faults, prior }) => (faults.length === fewest ? prior : 0))
  return drawn(weights, random)
}

/** A workshop as often as not, the open at any season else. From memory. */
const drawAir = (random: Random): number =>
  happens(random, 0.5) ? Math.round(between(random, 17, 23)) : Math.round(between(random, -10, 30))
