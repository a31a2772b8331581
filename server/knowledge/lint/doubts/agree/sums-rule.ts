import { printLimits } from '../../../../measure/reading/print.ts'
import type { Knowledge } from '../../../knowledge.ts'
import type { Report } from '../../report.ts'
import { isFarFromUsual } from '../far-off-rule.ts'
import { addsUp, type Figure, figuresOf, isCopper, sharesPlace } from '../figures.ts'

/** Limits are rounded, and a manual may leave out the lead. */
const rounding = 0.1
/** So many times too far out they let pass what is bad. */
const tooWide = 1.5
/** A share of copper is no closer than this: winding and cap each have their own tolerance. */
const shareRounding = 0.1

/** What is read through several parts is their sum: secondary, lead and cap are what the cap's contact shows. */
export function sumsRule(knowledge: Knowledge, report: Report): void {
  for (const [, machine] of knowledge.machines) {
    const figures = figuresOf(machine, knowledge).filter(
      (each) => addsUp(each) && !isFarFromUsual(each),
    )
    for (const whole of figures) {
      const rest = restOf(whole, figures)
      const own = figures.filter((each) => each.part === whole.part && isAlone(each))
      if (rest === null || own.some((each) => sharesPlace(each, whole))) continue
      // Of a coil it is the secondary, not the primary: whichever comes nearest.
      const [nearest] = own
        .map((each) => ({ own: each, sum: sumOf([each, ...rest]) }))
        .sort((a, b) => misfit(whole, a.sum) - misfit(whole, b.sum))
      if (nearest === undefined) continue
      const says = wrongSum(whole, nearest, rest) ?? wrongShare(whole, nearest)
      if (says !== null) report.add(machine, whole.path, `${whole.part.id}: ${says}`)
    }
  }
}

interface Span {
  readonly low: number
  readonly high: number
}
interface Nearest {
  readonly own: Figure
  readonly sum: Span
}

/** What the others on its path read alone; null where one does not tell, or where it is itself read alone, too. */
function restOf(whole: Figure, figures: readonly Figure[]): Figure[] | null {
  const [reach, ...more] = whole.reaches
  if (reach?.through === undefined || more.length > 0) return null
  // One that shows only when it has failed in some way is no part of the sum.
  const series = reach.through.filter((each) => typeof each === 'string')
  const rest = series.map((id) => figures.filter((f) => f.part.id === id && isAlone(f)))
  return rest.every(({ length }) => length === 1) ? rest.flat() : null
}

/** Touched on the part itself, and not warmed for it. */
const isAlone = ({ reaches, sheet }: Figure) =>
  sheet.at === undefined && reaches.some(({ through }) => through === undefined)

/** A side that is not limited is 0 below: nothing reads less. */
function sumOf(figures: readonly Figure[]): Span {
  const sum = (side: 'low' | 'high', none: number) =>
    figures.reduce((all, { limits }) => all + (limits[side] ?? none), 0)
  return { low: sum('low', 0), high: sum('high', Number.POSITIVE_INFINITY) }
}

const spanOf = ({ limits }: Figure): Span => ({
  low: limits.low ?? 0,
  high: limits.high ?? Number.POSITIVE_INFINITY,
})

function misfit(whole: Figure, { low, high }: Span): number {
  const span = spanOf(whole)
  return Math.abs(Math.log((span.low + span.high) / (low + high)))
}

function wrongSum(whole: Figure, { own, sum }: Nearest, rest: readonly Figure[]): string | null {
  const { low, high } = spanOf(whole)
  const refusesGood = high < sum.high * (1 - rounding) || low > sum.low * (1 + rounding)
  const isTwoSided = whole.limits.low !== undefined && whole.limits.high !== undefined
  const passesBad = isTwoSided && (high > sum.high * tooWide || low < sum.low / tooWide)
  if (!refusesGood && !passesBad) return null
  const { unit } = whole.quantity
  const parts = rest.map(({ part }) => part.id).join(' and ')
  return (
    `${whole.property} is ${printLimits(whole.limits, unit)}, and ${own.property} with ${parts} comes to ` +
    `${printLimits(sum, unit)}: look which of them is right`
  )
}

function wrongShare({ sheet }: Figure, { own, sum }: Nearest): string | null {
  if (sheet.copper === undefined || !isCopper(own)) return null
  const { low, high } = spanOf(own)
  const share = (low + high) / (sum.low + sum.high)
  if (Math.abs(share - sheet.copper) <= shareRounding) return null
  return `copper is ${sheet.copper}, and ${own.property} is ${share.toFixed(2)} of what is read: look which of them is right`
}
