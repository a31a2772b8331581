import { partsIn } from '../../../server/practice/world/sheet.ts'
import { add, type Change, caps, doing, exchange, having, plugs } from '../world/standing.ts'
import {
  all,
  allEnds,
  bothEnds,
  boxPlugs,
  coilPlugs,
  injectorPlugs,
  outputsMeant,
  plugOf,
  plugOfRole,
  pull,
  type Where,
} from './where.ts'

/** Words of a step, and what whoever follows them does to the machine; the sentence names what it is done to. */
export type Phrase = readonly [words: RegExp, change: (where: Where, sentence: string) => Change]

/** Words that take something apart, off or out, or leave something on the machine that was not there. */
export const takingApart: readonly Phrase[] = [
  [/unplug both ends|plugs at both ends/i, (where) => pull(where, bothEnds(where))],
  [/unplug the other end too/i, (where) => pull(where, bothEnds(where))],
  [/leave the (.*)plug apart|it takes the place of the coil/i, shownPlug],
  [/clip the adaptor to .*harness side/i, shownPlug],
  [/leave the plugs of the .* apart/i, (where) => pull(where, plugsOnSheet(where))],
  [/leave the plug of the coil apart/i, (where) => pull(where, coilPlugs(where))],
  [
    /unplug the .*coil and the .*coil\b/i,
    (where, sentence) =>
      pull(
        where,
        named(where, 'coil', sentence).map((id) => plugOf(where, id)),
      ),
  ],
  [/unplug the coil/i, (where) => pull(where, coilPlugs(where))],
  [
    /unplug the igniter and everything else/i,
    (where) => pull(where, [...boxPlugs(where, 'igniter'), plugOf(where, where.part)]),
  ],
  [/then unplug the igniter/i, (where) => pull(where, boxPlugs(where, 'igniter'))],
  [/unplug both plugs of the/i, (where) => pull(where, ['rectifier-plug', 'output-plug'])],
  [/unplug the output of the/i, (where) => pull(where, ['output-plug'])],
  [/pull the plug of the winding apart/i, (where) => pull(where, [plugOf(where, where.part)])],
  [
    /plug off the regulator|unplug the regulator|leave the regulator unplugged/i,
    (where) => pull(where, ['regulator-plug']),
  ],
  [/unplug the lamp switch/i, (where) => pull(where, [plugOfRole(where, 'lamp-switch')])],
  [/unplug the pump/i, (where) => pull(where, [plugOfRole(where, 'pump')])],
  [
    /pull the plug off the .*injector|pull its plug off/i,
    (where) => pull(where, injectorPlugs(where)),
  ],
  [
    /push the test lamp into an injector plug/i,
    (where) => pull(where, [plugOfRole(where, 'injector')]),
  ],
  [/unplug the exciters at the stator/i, (where) => pull(where, [plugOfRole(where, 'exciter')])],
  [/what covers the .* and pull it apart/i, (where) => pull(where, [where.part])],
  [/stop wire is unplugged/i, (where) => pull(where, ['stop-plug'])],
  [
    /(pull|take) (off )?the (plug )?caps? off|pull off the caps|pull (the .*|each )cap\b.* off/i,
    (where) => caps('off', ...outputsMeant(where)),
  ],
  [
    /unscrew (every|both) (spark )?plugs?/i,
    (where) => doing([plugs('out', ...all(where)), caps('off', ...all(where))]),
  ],
  [
    /unscrew the (spark )?plug/i,
    (where) => doing([plugs('out', ...outputsMeant(where)), caps('off', ...outputsMeant(where))]),
  ],
  [/screw the gauge into the plug hole/i, (where) => plugs('out', ...all(where))],
  [
    /unscrew (the|each) cap|twist it off its lead|lead from coil and cap/i,
    (where) => add('capOff', ...outputsMeant(where)),
  ],
  [
    /(the|a) lead screws off|where it comes off, its lead|lead from coil and cap/i,
    (where) => add('leadOff', ...outputsMeant(where)),
  ],
  [
    /push it into its cap|push a new dry plug into the cap/i,
    (where) => caps('on a grounded plug', ...outputsMeant(where)),
  ],
  [/push a new dry plug|fit a new plug/i, (where) => add('newPlug', ...outputsMeant(where))],
  [/tester (stands in|into) (the|a|one|its) cap/i, (where) => caps('on a tester', ...all(where))],
  [/exchange the .*coil and the .*coil\b/i, exchanged('coil')],
  [/caps?\b.* and the .* off their leads and exchange/i, exchanged('cap')],
  [/unscrew the .*plug and the .*plug and exchange/i, exchanged('plug')],
  [/take out every lamp/i, () => having({ lampsOut: true })],
  [/pull the fuse/i, () => having({ fuseOut: true })],
  [
    /(battery ground lead off|take the ground lead off the battery)/i,
    () => having({ batteryGroundOff: true }),
  ],
  [/jumper lead to the metal foot of the igniter/i, () => having({ jumper: 'igniter' })],
  [
    /back-probe pin in beside the ground wire of the injection unit/i,
    () => having({ jumper: 'pump-driver' }),
  ],
  [/back-probe pin in beside its ground wire/i, () => having({ jumper: 'pump-driver' })],
  [/beside the regulator's ground wire/i, () => having({ jumper: 'regulator' })],
  [/join the two pins of its plug on the harness side/i, () => having({ jumper: 'lamp-switch' })],
  [/clip the jumper lead to the pin/i, () => having({ jumper: 'stop wire' })],
  [/(clip|jumper) the meter to both ends/i, () => having({ jumper: null })],
  [/every stop switch or lamp that hangs on this wire/i, (where) => pull(where, branches(where))],
]

/** The two parts of a role that a sentence names. */
function exchanged(role: string): Phrase[1] {
  return (where, sentence) => {
    const [one, other, ...more] = named(where, role, sentence)
    if (one === undefined || other === undefined || more.length > 0)
      throw new Error(`The literal person does not see which two change places: “${sentence}”`)
    return exchange(one, other)
  }
}

const named = ({ site }: Where, role: string, sentence: string): readonly string[] =>
  partsIn(site.world.machine, role)
    .filter(({ name }) => sentence.includes(name))
    .map(({ id }) => id)

function shownPlug(where: Where): Change {
  return pull(where, where.plug === undefined ? [] : [where.plug])
}

/** The plugs that the sheet names for a part; the two ends of its wires where it names none. */
function plugsOnSheet(where: Where): readonly string[] {
  const part = where.site.world.machine.parts.find(({ id }) => id === where.part)
  return part?.plugs ?? bothEnds(where)
}

/** Switches and lamps on the wires of a part. A lamp switch on the way stays, by the words of its step. */
function branches(where: Where): readonly string[] {
  const roles = ['stop-switch', 'tether', 'throttle-safety', 'lamp']
  const { machine, circuit } = where.site.world
  const ends = allEnds(where)
  return roles
    .flatMap((role) => partsIn(machine, role))
    .flatMap(({ id }) => circuit.ends[id]?.[0] ?? [])
    .filter((plug) => ends.includes(plug))
}
