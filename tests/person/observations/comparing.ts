import { between } from '../../../server/practice/world/chance.ts'
import { contactOhms } from '../../../server/practice/world/contact.ts'
import { ground, node } from '../../../server/practice/world/node.ts'
import { limitsOn, partsIn } from '../../../server/practice/world/sheet.ts'
import type { CheckHere, Observation } from '../check.ts'
import { answer, cannotTell } from '../seen.ts'
import { nowAt } from '../world/now.ts'
import { ohmsMet } from '../world/probes.ts'
import { type Doing, doing } from '../world/site.ts'
import { ohmsOfSeveral, type Places, placesOn, several, wiresOf } from './reading.ts'

/** Ohms, for a comparison that the person makes in the head. */
function met(
  { site }: CheckHere,
  [from, to]: Places,
  what: Doing = {},
  contact = contactOhms(site.random, false),
): number {
  const touching = { from, to, awkward: false, clipped: true, fingers: false }
  return ohmsMet(nowAt(doing(site, what)), touching, contact)
}

const pairs = (check: CheckHere): readonly Places[] => {
  const { card, site } = check
  const half = placesOn(check)[0].split(' ')[2] as 'own' | 'harness'
  const plug = card.spot!.connector!.id
  const [, ...pins] = site.world.circuit.legs[card.part!]!
  return [0, 1, 2].map((i) => [
    node([plug, pins[i]!], half),
    node([plug, pins[(i + 1) % 3]!], half),
  ])
}

/** "Enter all three", one touch each. */
const legResistance: Observation = (check) =>
  ohmsOfSeveral(check, pairs(check), { enter: 'all', while: [{}] })

/** With a known current a few hundredths of an ohm are plain to see, and the leads do not count. */
const legsCompare: Observation = (check) => {
  const { site, part } = check
  const [plug, ...pins] = site.world.circuit.legs[part]!
  const now = nowAt(site)
  const touching = (i: number) => ({
    from: node([plug, pins[i]!], 'own'),
    to: node([plug, pins[(i + 1) % 3]!], 'own'),
    awkward: false,
    clipped: true,
    fingers: false,
  })
  const values = [0, 1, 2].map((i) => ohmsMet(now, touching(i), 0) - site.world.person.leads)
  const alike = Math.max(...values) <= 1.1 * Math.min(...values) * between(site.random, 0.97, 1.03)
  return answer(alike ? 'alike' : 'one-off')
}

/** The run end to ground, compared with what the run exciter has itself. */
const excitersCompare: Observation = (check) => {
  const { machine, circuit } = check.site.world
  const run = partsIn(machine, 'run-exciter')[0]!
  const [plug, free] = circuit.ends[run.id]!
  const read = met(check, [node([plug, free], 'own'), ground])
  return answer(read <= 1.1 * limitsOn(run, 'resistance')!.high! ? 'run-end' : 'other')
}

/** Each of three diodes both ways. What is open or shorted shows, but for what fails only under load. */
const diodeTest: Observation = ({ site, part }) => {
  const { looks } = nowAt(site).effect(part)
  return answer(looks ?? 'alike')
}

const wiggle: Observation = (check) => {
  const bent = several({ shaken: check.part }, 4)
  const values = wiresOf(check).flatMap((places) => {
    const clips = contactOhms(check.site.random, false)
    return bent.map((what) => met(check, places, what, clips))
  })
  if (values.every((value) => !Number.isFinite(value)))
    return cannotTell('it shows OL all the while')
  const jumps = Math.max(...values) > Math.min(...values) * 1.5 + 1
  return answer(jumps ? 'jumps' : 'steady')
}

/** Ohms that are compared with each other, and entered as an answer or as the odd one out. */
export const comparingChecks: Readonly<Record<string, Observation>> = {
  'leg-resistance': legResistance,
  'legs-compare': legsCompare,
  'exciters-compare': excitersCompare,
  'diode-test': diodeTest,
  'wiggle-reading': wiggle,
}
