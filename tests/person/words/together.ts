import { partsIn } from '../../../server/practice/world/sheet.ts'
import { add, type Change, caps, doing, having, plugs, remove } from '../world/standing.ts'
import type { Phrase } from './apart.ts'
import {
  all,
  boxPlugs,
  coilPlugs,
  join,
  lampPlug,
  lampSwitchPlugs,
  outputsMeant,
  type Where,
} from './where.ts'

/** A known good part goes in where the old one sat, and its plugs with it. */
const standIn = (role: string, { site, part }: Where): Change => {
  const parts = partsIn(site.world.machine, role).map(({ id }) => id)
  return add('standIns', ...(parts.includes(part) ? [part] : parts))
}

const withItsPlugs = (role: string, box: string, where: Where, ...besides: string[]): Change => {
  const own = boxPlugs(where, box).filter((plug) => !besides.includes(plug))
  return doing([join(...own), standIn(role, where)])
}

/**
 * Words that say, before something is read, that something is together, on or in. Whoever reads "leave the regulator
 * plugged in" and finds it apart plugs it in; what no word names stays as it is.
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
    /lamp switch (on the way stays )?plugged in and on/i,
    (where) => doing([join(...lampSwitchPlugs(where)), having({ lamps: 'on' })]),
  ],
  [
    /the ground lead is on the battery/i,
    () =>
      doing([having({ batteryGroundOff: false, batteryOut: false }), remove('off', 'battery-off')]),
  ],
  [/the plug together/i, () => join('output-plug')],
  [/screw the good condenser down/i, (where) => standIn('condenser', where)],
  [/screw the good one down/i, (where) => standIn('module', where)],
  [/plug the good igniter in/i, (where) => withItsPlugs('igniter', 'igniter', where, 'stop-plug')],
  [/plug the good coil in/i, (where) => doing([join(...coilPlugs(where)), standIn('coil', where)])],
  [
    /plug the good regulator in|unplug the regulator and plug the good one in/i,
    (where) => doing([join('regulator-plug'), standIn('regulator', where)]),
  ],
  [
    /^plug the good one in/i,
    (where) => doing([join('rectifier-plug', 'output-plug'), standIn('rectifier', where)]),
  ],
  [
    /change the injection units over/i,
    (where) => withItsPlugs('pump-driver', 'pump-driver', where),
  ],
  [
    /red clamp on the plus post/i,
    (where) => doing([having({ batteryGroundOff: false }), standIn('battery', where)]),
  ],
  [/exchange the .*coil and the .*coil\b/i, (where) => join(...coilPlugs(where, all(where)))],
  [
    /caps stay on (their|the spark) plugs|every cap (stays )?on its own plug|caps on their plugs|caps on\b|^tighten them, push both caps home/i,
    (where) => caps('on its plug', ...all(where)),
  ],
  [/push the cap home/i, (where) => caps('on its plug', ...outputsMeant(where))],
  [
    /spark plugs in, caps on|the spark plugs stay in|^tighten them/i,
    (where) => plugs('in', ...all(where)),
  ],
  [/fit a new plug of the right grade in/i, (where) => plugs('in', ...outputsMeant(where))],
  [
    /every spark plug (is|stays) grounded|every spark plug grounded in its cap|any other spark plug stays grounded in its cap/i,
    (where) => doing([plugs('out', ...all(where)), caps('on a grounded plug', ...all(where))]),
  ],
  [/fit a lamp that you have seen burn/i, () => having({ goodLamp: true })],
  [
    /every connector joined, every cover on/i,
    ({ site }) =>
      doing([
        join(...Object.keys(site.world.machine.connectors)),
        remove('off', ...Object.keys(site.world.machine.access)),
        having({ flywheelBare: false, fuseOut: false, batteryGroundOff: false }),
      ]),
  ],
]

/** Words on where switches, lamps and fuel stand. */
export const positions: readonly Phrase[] = [
  [/(switch|key) at run|set as for work|as for work:/i, () => having({ stopSwitch: 'RUN' })],
  // A rider's weight and a clipped cord close what stops the engine by opening.
  [/seat weighed down|set the .* as for work/i, () => having({ letGo: new Set() })],
  [/^let the .* go, as when/i, ({ part }) => add('letGo', part)],
  [/tether (clip )?(left )?on|as for work:/i, () => having({ tether: 'on' })],
  [
    /(stop|key) switch at off|key (still )?at off|turn the key to off/i,
    () => having({ stopSwitch: 'OFF' }),
  ],
  [/tether pulled|pull the tether|tether on and pull it/i, () => having({ tether: 'pulled' })],
  [/set the (.*) to off, or pull its cap/i, turnedOff],
  [
    /lamps on|switch the lamps on|lamp switch (plugged in and )?on|light (all|the) lamps/i,
    () => having({ lamps: 'on' }),
  ],
  [/switch the lamps off|lamps off|lamps, switch them off/i, () => having({ lamps: 'off' })],
  [/^(?!if ).*fuel off/i, () => having({ fuelOff: true })],
  // Whoever starts an engine turns its switches to RUN and opens its fuel: starting is just that.
  [
    /start (it|the engine)|let it (idle|run)|let the engine idle|^run (the engine|it)\b|it must start|take it to full speed|bring back the conditions of the complaint|turn it with the starter/i,
    () => having({ stopSwitch: 'RUN', tether: 'on', fuelOff: false }),
  ],
]

function turnedOff({ site, part }: Where): Change {
  const role = site.world.machine.parts.find(({ id }) => id === part)?.role
  return having(role === 'tether' ? { tether: 'pulled' } : { stopSwitch: 'OFF' })
}
