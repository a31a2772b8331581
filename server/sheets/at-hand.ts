import { type MeterAtHand, meterOfClass } from '../jobs/measuring/meter-at-hand.ts'
import { usualAir } from '../jobs/measuring/warmth.ts'
import { readZero } from '../jobs/posts/zero.ts'
import type { Conditions } from '../jobs/record/events.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { usualMeter } from '../knowledge/meters.ts'
import { textOf } from '../web/fields.ts'
import { airIn, type DegreeUnit, printTemperature } from '../web/typed/temperature.ts'

/** What stands in the address of a sheet's pages: as it was typed, so that it can be shown again. */
export interface Typed {
  readonly air: string
  readonly meter: string
  /** Ω with the probes held together; empty where they were not. */
  readonly zero: string
  /** Words to look for among the readings. */
  readonly find: string
}

/** Under what circumstances somebody reads a sheet. What could not be taken is as usual, with a sentence. */
export interface AtHand {
  readonly typed: Typed
  readonly conditions: Conditions
  readonly airUnit: DegreeUnit
  readonly meter: MeterAtHand
  readonly zero: number | null
  readonly problems: Readonly<Partial<Record<'air' | 'meter' | 'zero', string>>>
}

export function typedIn(query: unknown): Typed {
  const word = (name: string) => textOf(query, name).trim()
  return { air: word('air'), meter: word('meter'), zero: word('zero'), find: word('find') }
}

export function atHand(knowledge: Knowledge, typed: Typed): AtHand {
  const air = typed.air === '' ? usual : airIn(typed.air, 'C')
  const zero = readZero(typed.zero)
  const known = typed.meter === '' || knowledge.meters.has(typed.meter)
  const meter = (known && typed.meter) || usualMeter(knowledge)
  const { celsius, unit } = typeof air === 'string' ? usual : air
  const leads = typeof zero === 'string' ? null : zero
  return {
    typed,
    conditions: { where: 'bench', air: celsius, airUnit: unit, engine: 'cold', tools: [], meter },
    airUnit: unit,
    meter: meterOfClass(knowledge, meter, leads),
    zero: leads,
    problems: {
      ...(typeof air === 'string' && { air }),
      ...(!known && { meter: 'Choose a meter from the list.' }),
      ...(typeof zero === 'string' && { zero }),
    },
  }
}

const usual = { celsius: usualAir, unit: 'C' } as const

/** The same circumstances in an address: only what is not as usual. */
export function asQuery({ typed }: AtHand): URLSearchParams {
  const query = new URLSearchParams()
  for (const name of ['air', 'meter', 'zero'] as const) {
    if (typed[name] !== '') query.set(name, typed[name])
  }
  return query
}

/** "14 °F": the air as it was taken. */
export const airWords = ({ conditions, airUnit }: AtHand): string =>
  printTemperature(conditions.air, airUnit)
