import type { Part } from '../../../server/knowledge/schema/machine.ts'
import { between, type Random, spread } from '../../../server/practice/world/chance.ts'
import { limitsOn, type SheetValue } from '../../../server/practice/world/sheet.ts'

/** What a good part really is. */
export interface GoodPart {
  /** Ω at 20 °C: of the winding, the resistor, the filament, the closed contact, the wire. */
  readonly ohms: number
  /** Ω of the secondary, where a part has two windings; `ohms` is the primary then. */
  readonly secondary: number
  /** µF of a condenser. */
  readonly microfarad: number
  /** V peak, open, at `rpm`. */
  readonly peak: number
  readonly rpm: number
  /** V at speed, where the sheet gives it: of an igniter at `rpm`, of a regulator always. */
  readonly atSpeed: number
}

/**
 * A sheet that names no speed means what every healthy machine gives on a modest pull, rpm. Common practice,
 * no published source.
 */
const modestPull = 400

/** A good winding gives so many times the least that its sheet asks for. Common practice, no published source. */
const aboveLeast = [1.2, 2] as const

/** Ω of things whose sheet gives no value, by role. Common practice, no published source. */
const usualOhms: Readonly<Record<string, number>> = {
  'plug-lead': 1,
  'ground-strap': 0.02,
  'regulator-ground': 0.02,
  wiring: 0.04,
  'stop-switch': 0.1,
  interlock: 0.1,
  'key-switch': 0.05,
  switch: 0.06,
  // Cold filaments of 35 W and of 5 W at 12 V read a tenth of their hot ohms.
  lamp: 0.4,
  injector: 12,
  pump: 6,
  fuse: 0.01,
  'battery-lead': 0.001,
}

/** The truth about a good part: somewhere inside what its sheet allows. */
export function drawGoodPart(part: Part, random: Random): GoodPart {
  const on = (property: string) => limitsOn(part, property)
  const ohms =
    on('resistance') ??
    on('to-ground') ??
    on('primary-to-ground') ??
    on('leg-resistance') ??
    on('primary-resistance') ??
    on('cap-resistance') ??
    on('relay-coil')
  const peak = on('peak-voltage') ?? on('pulse') ?? on('pump-volts')
  const asked = between(random, ...aboveLeast)
  const least = Math.max(peakAt(peak, modestPull), peakAt(on('ac-voltage'), modestPull, Math.SQRT2))
  const legs = peakAt(on('leg-volts'), modestPull, Math.SQRT2)
  return {
    ohms: inside(ohms, random) ?? spread(random, usualOhms[part.kind] ?? 1, 0.2),
    secondary: inside(on('secondary-resistance') ?? on('module-secondary'), random) ?? 0,
    microfarad: inside(on('capacitance'), random) ?? 0,
    peak: Math.max(least, legs) * asked,
    rpm: modestPull,
    atSpeed: regulated(on('regulated-volts'), random) ?? running(on('running-pulse'), random) ?? 0,
  }
}

/** Anywhere in the inner nine tenths. */
function inside(limits: SheetValue | undefined, random: Random): number | undefined {
  if (limits?.low === undefined || limits.high === undefined) return undefined
  const margin = (limits.high - limits.low) / 20
  return between(random, limits.low + margin, limits.high - margin)
}

/** The least peak that is asked for, brought to another speed. EMF is proportional to speed. */
function peakAt(limits: SheetValue | undefined, rpm: number, toPeak = 1): number {
  return ((limits?.low ?? 0) * toPeak * rpm) / (limits?.rpm ?? rpm)
}

function regulated(limits: SheetValue | undefined, random: Random): number | undefined {
  return limits && between(random, limits.low! + 0.7, limits.high! - 0.4)
}

function running(limits: SheetValue | undefined, random: Random): number | undefined {
  return limits && limits.low! * between(random, 1.15, 1.5)
}
