import { printValue } from '../../../../measure/reading/print.ts'
import { crankOf, inOtherMeasure } from '../../../before-top.ts'
import type { Knowledge } from '../../../knowledge.ts'
import type { Report } from '../../report.ts'
import { type Figure, figuresOf, sides } from '../figures.ts'

/** Rods of small engines, in strokes. From memory: 1.5 to 2.2. */
const rods = { shortest: 1.2, longest: 3 }
/** A manual gives whole degrees, and the nearest twentieth of a mm. */
const rounding = 0.06

/** A rod is as long as rods are, and a moment that is given in mm and in degrees is one moment. */
export function crankRule(knowledge: Knowledge, report: Report): void {
  for (const [, machine] of knowledge.machines) {
    const crank = crankOf(machine)
    if (crank === null) continue
    const strokes = crank.rod / crank.stroke
    if (strokes < rods.shortest || strokes > rods.longest) {
      const says =
        `a rod of ${machine.crank?.rod} is ${strokes.toFixed(1)} strokes of ${machine.crank?.stroke}, ` +
        `and rods are ${rods.shortest} to ${rods.longest}: look whether one of them is something else`
      report.add(machine, ['crank'], says)
    }
    const figures = figuresOf(machine, knowledge)
    for (const figure of figures) {
      const other = figures.find((each) => isOtherOf(each, figure))
      for (const side of sides) {
        const says = other && wrongWith(side, figure, other, crank)
        if (says) report.add(machine, [...figure.path, side], `${figure.part.id}: ${says}`)
      }
    }
  }
}

const isOtherOf = (other: Figure, { part, says, quantity }: Figure): boolean =>
  quantity.crank === 'angle' && other.part === part && other.property === says.as

function wrongWith(
  side: 'low' | 'high',
  { limits, property, quantity, sheet }: Figure,
  other: Figure,
  crank: NonNullable<ReturnType<typeof crankOf>>,
): string | null {
  const [given, value] = [limits[side], other.limits[side]]
  if (given === undefined || value === undefined) return null
  const asked = inOtherMeasure(value, other.quantity, crank)
  if (asked !== null && Math.abs(given / asked - 1) <= rounding) return null
  const comes = asked === null ? 'more than the stroke' : printValue(asked, quantity.unit)
  return (
    `the ${side} limit of ${property}, ${sheet[side]}, is not that of ${other.property}, ${other.sheet[side]}: ` +
    `with this crank that is ${comes}`
  )
}
