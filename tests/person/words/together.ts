import { partsIn } from '../world/sheet.ts'
import { add, type Change, caps, doing, having, plugs, remove } from '../world/standing.ts'
import { outputsOf } from '../world/world.ts'
import type { Phrase } from './apart.ts'
import { boxPlugs, coilPlugs, outputsMeant, plugOfRole, type Where } from './where.ts'

const all = ({ site }: Where) => outputsOf(site.world)
const join = (...names: readonly string[]): Change => remove('apart', ...names)

/** A known good part goes in where the old one sat, and its plugs with it. */
const standIn = (role: string, where: Where): Change => {
  const { machine } = where.site.world
  const own = where.part
    ? machine.parts.filter(({ id, role: its }) => id === where.part && its === role)
    : []
  const parts = (own.length > 0 ? own : partsIn(machine, role)).map(({ id }) => id)
  return add('standIns', ...parts)
}

/**
 * Words that say that something is together, on, in or back. Whoever reads "leave the regulator plugged in" and finds
 * it apart plugs it in; what no word names stays as it is.
 */
export const puttingTogether: readonly Phrase[] = [
  [/all plugs together/i, ({ site }) => join(...Object.keys(site.world.machine.connectors))],
  [/leave the regulator plugged in/i, () => join('regulator-plug')],
  [/leave the coil plugged in/i, (where) => join(...coilPlugs(where))],
  [
    /leave the lamp plugged in and its bulb in place/i,
    (where) => doing([join(lampPlug(where)), having({ lampsOut: false })]),
  ],
  [
    /leave the injection unit plugged in|leave the injection plug on the unit/i,
    (where) => join(...boxPlugs(where, 'pump-driver').slice(0, 1)),
  ],
  [
    /a lamp switch on the way stays plugged in and on/i,
    (where) => doing([join(...lampSwitch(where)), having({ lamps: 'on' })]),
  ],
  [/of its output plug, the plug together/i, () => join('output-plug')],
  [
    /plug the good igniter in/i,
    (where) =>
      doing([
        join(...boxPlugs(where, 'igniter').filter((plug) => plug !== 'stop-plug')),
        standIn('igniter', where),
      ]),
  ],
  [/plug the good coil in/i, (where) => doing([join(...coilPlugs(where)), standIn('coil', where)])],
  [
    /plug the good regulator in|unplug the regulator and plug the good one in/i,
    (where) => doing([join('regulator-plug'), standIn('regulator', where)]),
  ],
  [
    /key at off\. plug the good one in|^plug the good one in/i,
    (where) => doing([join('rectifier-plug', 'output-plug'), standIn('rectifier', where)]),
  ],
  [
    /change the injection units over/i,
    (where) => doing([join(...boxPlugs(where, 'pump-driver')), standIn('pump-driver', where)]),
  ],
  [
    /put its clamps on the posts themselves/i,
    (where) => doing([having({ batteryGroundOff: false }), standIn('battery', where)]),
  ],
  [/exchange left and right coil/i, (where) => join(...coilPlugs(where, all(where)))],
  [
    /caps stay on (their|the spark) plugs|caps on their plugs|caps on\b|push both caps home/i,
    (where) => caps('on its plug', ...all(where)),
  ],
  [/push the cap home/i, (where) => caps('on its plug', ...outputsMeant(where))],
  [
    /spark plugs in, caps on/i,
    (where) => doing([plugs('in', ...all(where)), caps('on its plug', ...all(where))]),
  ],
  [/^tighten them/i, (where) => plugs('in', ...all(where))],
  [/fit a new plug of the right grade in/i, (where) => plugs('in', ...outputsMeant(where))],
  [
    /every plug (is|stays) grounded|every plug grounded in its cap|old plugs stay out and grounded/i,
    (where) => doing([plugs('out', ...all(where)), caps('on a grounded plug', ...all(where))]),
  ],
  [/fit a lamp that you have seen burn/i, () => having({ goodLamp: true })],
  [/(switch|key) at run|set as for work|as for work:/i, () => having({ stopSwitch: 'RUN' })],
  [/tether (left )?on|as for work:/i, () => having({ tether: 'on' })],
  [/(stop|key) switch at off|key at off/i, () => having({ stopSwitch: 'OFF' })],
  [/tether pulled/i, () => having({ tether: 'pulled' })],
  [/set the (.*) to off, or pull its cap/i, (where) => turnedOff(where)],
  [/lamps on|switch the lamps on|and on\.$|lamp switch on/i, () => having({ lamps: 'on' })],
  [/switch the lamps off|lamps off/i, () => having({ lamps: 'off' })],
  [/switch the lamp switch on/i, () => having({ lamps: 'on' })],
  // Whoever starts an engine turns its switches to RUN and opens its fuel: starting is just that.
  [
    /start (it|the engine)|let it (idle|run)|let the engine idle|run the engine|run it until/i,
    () => having({ stopSwitch: 'RUN', tether: 'on', fuelOff: false }),
  ],
]

/** The same, said for afterwards. */
export const puttingBack: readonly Phrase[] = [
  [/plug the stop wire in again/i, () => join('stop-plug')],
  [
    /plug the switch in again/i,
    (where) => doing([join(...lampSwitch(where)), having({ jumper: null })]),
  ],
]

function turnedOff({ site, part }: Where): Change {
  const role = site.world.machine.parts.find(({ id }) => id === part)?.role
  return having(role === 'tether' ? { tether: 'pulled' } : { stopSwitch: 'OFF' })
}

const lampSwitch = (where: Where) =>
  partsIn(where.site.world.machine, 'lamp-switch').length > 0
    ? [plugOfRole(where, 'lamp-switch')]
    : []

function lampPlug({ site }: Where): string {
  const lamps = partsIn(site.world.machine, 'lamp')
  const on = lamps.find(({ id }) => site.world.circuit.ends[id] !== undefined)!
  return site.world.circuit.ends[on.id]![0]
}
