import { type Contribution, rectangular } from '../doubt/budget.ts'
import { accuracy, rangeAt } from '../doubt/meter.ts'
import { settings } from '../reading/settings.ts'
import type { Circumstances } from './circumstances.ts'
import type { Settled } from './contact.ts'
import {
  asItIs,
  type Correct,
  type Corrected,
  corrections,
  type Step,
  step,
} from './corrections.ts'
import { leads } from './leads.ts'

export type { Circumstances } from './circumstances.ts'
export type { Step } from './corrections.ts'

/** What touches leave in doubt: see `settle`. */
type Touched = Pick<Settled, 'doubt' | 'spread'>

export interface Compared {
  /** Compared with the limits, in the quantity's unit. */
  readonly value: number
  /** Steps that change something, in order. */
  readonly steps: readonly Step[]
  readonly contributions: readonly Contribution[]
}

/**
 * Brings a settled reading to the circumstances of its limits, and lists what that leaves in doubt: the
 * leads come off, then the quantity's own corrections follow in their order.
 */
export function correct(reading: number, touched: Touched, at: Circumstances): Compared {
  const { touches, corrections: names } = at.quantity
  const ways: readonly Correct[] = [
    ...(touches.leads ? [withoutLeads] : []),
    (value) => touchedLike(value, touched, at),
    ...names.map((name) => corrections[name]),
  ]
  const asShown: Compared = { value: reading, steps: [], contributions: [meter(reading, at)] }
  return ways.reduce((before, way) => after(before, way(before.value, at)), asShown)
}

/** Doubt from before a correction counts as often as the correction scales it. */
function after(before: Compared, { value, factor, steps, contributions }: Corrected): Compared {
  const scaled = (line: Contribution) => ({ ...line, sensitivity: line.sensitivity * factor })
  return {
    value,
    steps: [...before.steps, ...steps.filter(changes)],
    contributions: [
      ...(factor === 1 ? before.contributions : before.contributions.map(scaled)),
      ...contributions,
    ],
  }
}

const changes = ({ how, amount }: Step) => amount !== (how === 'plus' || how === 'minus' ? 0 : 1)

function withoutLeads(reading: number, { zero, ranges }: Circumstances): Corrected {
  const { ohms, contribution } = leads(zero, reading, ranges)
  const value = reading - ohms
  return {
    ...asItIs(value),
    steps: [step('leads', 'minus', ohms, value)],
    contributions: [contribution],
  }
}

function touchedLike(value: number, { spread, doubt }: Touched, at: Circumstances): Corrected {
  const { unit, touches } = at.quantity
  const line = { what: 'touches', unit, sensitivity: 1 } as const
  const hidden = touches.contact === null ? 0 : doubt
  return {
    ...asItIs(value),
    contributions: [
      rectangular({ ...line, name: 'touches that agree', halfWidth: spread / 2 }),
      rectangular({ ...line, name: 'contact that none shows', halfWidth: hidden }),
    ],
  }
}

function meter(
  reading: number,
  { ranges, quantity: { unit, setting } }: Circumstances,
): Contribution {
  return rectangular({
    name: `accuracy of the ${settings[setting].instrument}`,
    what: 'meter',
    unit,
    halfWidth: accuracy(rangeAt(ranges, reading), reading),
    sensitivity: 1,
  })
}
