import { ground, node } from '../../../../server/practice/world/node.ts'
import { partNamed, partsIn, servedBy } from '../../../../server/practice/world/sheet.ts'
import type { Resistor } from '../../../../server/practice/world/solve.ts'
import { type Now, ohmsOf } from '../now.ts'
import { seated } from '../site.ts'
import { celsiusOf, copper } from '../temperature.ts'

/** What has two ends, by its own half of its plug. */
export function parts(now: Now): Resistor[] {
  return Object.entries(now.site.world.circuit.ends).flatMap(([part, [plug, a, b]]) => {
    const from = node([plug, a], 'own')
    const to = node([plug, b], 'own')
    const sheet = partNamed(now.site.world.machine, part)
    const { kind, role } = sheet
    if (kind === 'interlock') return [interlock(now, part, from, to)]
    if (kind === 'stop-switch') return [stopSwitch(now, part, from, to)]
    const sits = kind === 'ignition-coil' ? seated(now.site, role, servedBy(sheet)[0]) : part
    if (kind === 'lamp') return [lamp(now, part, from, to)]
    if (kind === 'switch') return [lampSwitch(now, part, from, to)]
    return winding(now, sits, from, to)
  })
}

function winding(now: Now, part: string, from: string, to: string): Resistor[] {
  const effect = now.effect(part)
  const isCoil = partNamed(now.site.world.machine, part).kind === 'ignition-coil'
  const turns = isCoil ? effect.primaryTurns : effect.turns
  const series = (isCoil ? effect.primarySeries : effect.series) ?? 0
  const ohms = copper(now.good(part).ohms * (turns ?? 1), celsiusOf(now.site, part))
  const { leak = Infinity, at = 0.5, breaksDownAt } = effect
  const tap = `${part} tap`
  const { testVolts = 1 } = now.site.doing
  return [
    [from, tap, ohms * at + series / 2],
    [tap, to, ohms * (1 - at) + series / 2],
    // Insulation that fails under voltage holds off the few volts of a meter.
    [tap, ground, (breaksDownAt ?? 0) <= testVolts ? leak : Infinity],
  ]
}

function stopSwitch(now: Now, part: string, from: string, to: string): Resistor {
  const { standing, world } = now.site
  const { series = 0, across = Infinity } = now.effect(part)
  const { role } = partNamed(world.machine, part)
  const closed =
    (role === 'stop-switch' && standing.stopSwitch === 'OFF') ||
    (role === 'tether' && standing.tether === 'pulled')
  return [from, to, closed ? now.good(part).ohms + series : across]
}

/** Closed as long as it is set for work. */
function interlock(now: Now, part: string, from: string, to: string): Resistor {
  const { series = 0, across = Infinity } = now.effect(part)
  const isSet = !now.site.standing.letGo.has(part)
  return [from, to, isSet ? now.good(part).ohms + series : across]
}

/** What a key switch joins, where it stands. */
export function keySwitches(now: Now): Resistor[] {
  const { circuit } = now.site.world
  const { standing, doing } = now.site
  return Object.entries(circuit.keys ?? {}).flatMap(([part, { plug, ...pins }]): Resistor[] => {
    const { series = 0, contacts = 0, across = Infinity } = now.effect(part)
    const at = (pin: number) => node([plug, pin], 'own')
    const own = now.good(part).ohms
    const drops = doing.atStart && now.has(part, 'drops-at-start')
    const isOn = standing.stopSwitch === 'RUN' || doing.atStart
    const run = drops ? Infinity : isOn ? own + series : across
    return [
      [at(pins.feed), at(pins.run), run],
      [at(pins.feed), at(pins.start), doing.atStart ? own + contacts : Infinity],
    ]
  })
}

function lampSwitch(now: Now, part: string, from: string, to: string): Resistor {
  const on = now.site.standing.lamps === 'on'
  return [from, to, on ? now.good(part).ohms + (now.effect(part).series ?? 0) : Infinity]
}

function lamp(now: Now, part: string, from: string, to: string): Resistor {
  const out = now.site.standing.lampsOut
  return [from, to, out ? Infinity : now.good(part).ohms + lampSeries(now, part)]
}

/** A regulator that has let the voltage rise has burnt them all. */
export function lampSeries(now: Now, lamp: string): number {
  const burnt = partsIn(now.site.world.machine, 'regulator').some(({ id }) =>
    now.has(id, 'open-burns-lamps'),
  )
  return burnt ? Infinity : (now.effect(lamp).series ?? 0)
}

/** Three legs from a common middle: between two of them one reads both. */
export function legs(now: Now): Resistor[] {
  return Object.entries(now.site.world.circuit.legs).flatMap(([part, [plug, ...pins]]) => {
    const { leg, turns = 1, series = 0, leak = Infinity } = now.effect(part)
    const half = ohmsOf({ ...now, effect: () => ({}) }, part) / 2
    return pins.flatMap((pin, i): Resistor[] => [
      [
        node([plug, pin], 'own'),
        `${part} middle`,
        half * (i === leg ? turns : 1) + (i === leg ? series : 0),
      ],
      ...(i === leg ? [[node([plug, pin], 'own'), ground, leak] as const] : []),
    ])
  })
}
