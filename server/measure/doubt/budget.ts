import type { Unit } from '../reading/units.ts'
import { addUp, halfWidth95, type Uncertainty } from './uncertainty.ts'

/** One line of an uncertainty budget: an input that is not known exactly. */
export interface Contribution {
  readonly name: string
  readonly what: 'meter' | 'leads' | 'temperature' | 'touches' | 'speed' | 'adaptor' | 'blade'
  /** Unit of the input; '' for a plain ratio. */
  readonly unit: Unit | 'K' | '/K' | 'rpm' | 's' | ''
  readonly distribution: 'rectangular' | 'normal'
  /** Of a rectangle; left out for a normal. */
  readonly halfWidth?: number
  /** Standard uncertainty of the input, in its unit. */
  readonly u: number
  /** How much the result changes per unit of the input. */
  readonly sensitivity: number
}

export interface Budget extends Uncertainty {
  /** Lines that matter, in the order given, each with its share of u², 0 to 1. */
  readonly lines: readonly (Contribution & { readonly share: number })[]
  /** Half-width that holds the true value with 95 %, in the result's unit. */
  readonly expanded: number
}

/** Known to lie within ± halfWidth, and nothing more: u = halfWidth/√3 (JCGM 100, 4.3.7). */
export function rectangular(
  line: Omit<Contribution, 'distribution' | 'u'> & { readonly halfWidth: number },
): Contribution {
  return { ...line, distribution: 'rectangular', u: line.halfWidth / Math.sqrt(3) }
}

/** Known with a standard uncertainty, such as half a certificate's U with k = 2 (JCGM 100, 4.3.3). */
export function normal(line: Omit<Contribution, 'distribution' | 'halfWidth'>): Contribution {
  return { ...line, distribution: 'normal' }
}

/**
 * Combines independent contributions: u² = Σ (sensitivity·u)² (JCGM 100, 5.1.2). Lines that add
 * nothing are left out.
 *
 * @throws RangeError for a contribution that is negative or no number.
 */
export function combine(contributions: readonly Contribution[]): Budget {
  const lines = contributions.filter((line) => part(line) !== 0)
  const whole = uncertaintyOf(lines)
  return {
    ...whole,
    lines: lines.map((line) => ({ ...line, share: (part(line) / whole.u) ** 2 })),
    expanded: halfWidth95(whole),
  }
}

/** The combined uncertainty alone, without the budget. */
export function uncertaintyOf(contributions: readonly Contribution[]): Uncertainty {
  const parts = (distribution: Contribution['distribution']) =>
    contributions.filter((line) => line.distribution === distribution).map(part)
  return addUp(
    parts('rectangular').map((u) => u * Math.sqrt(3)),
    parts('normal'),
  )
}

const part = ({ u, sensitivity }: Contribution) => Math.abs(sensitivity) * u
