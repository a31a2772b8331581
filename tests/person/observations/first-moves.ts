import type { Observation } from '../check.ts'
import { answer, barred } from '../seen.ts'
import { nowAt } from '../world/now.ts'
import { ropeIsOff } from '../world/systems/engine.ts'
import { modes, rolesOf } from './asking.ts'
import { lasting } from './spark.ts'

/** Some poor pins carry again once they were parted; what was added is none of the tree. From memory. */
const reseated: Observation = (check) => {
  const { site, kind } = check
  if (ropeIsOff(nowAt(site))) return barred('the rope starter is off')
  const poor = modes(site.world).some((mode) => ['corroded', 'wet', 'open'].includes(mode))
  const isWire = rolesOf(site.world).some((role) =>
    /(exciter|pickup|coil)-wires|pickup-plug/.test(role),
  )
  const chance = lasting(site.world.seed, 'engine', kind)()
  return answer(chance < (poor && isWire ? 0.34 : 0.01) ? 'back' : 'same')
}

const addedOff: Observation = ({ site }) => {
  if (ropeIsOff(nowAt(site))) return barred('the rope starter is off')
  const chance = lasting(site.world.seed, 'engine', 'added')()
  if (chance < 0.6) return answer('none')
  return answer(site.world.elsewhere && chance > 0.7 ? 'back' : 'same')
}

/** What an old hand does before a tool is out. */
export const firstMovesChecks: Readonly<Record<string, Observation>> = {
  'added-off': addedOff,
  'reseat-connectors': reseated,
}
