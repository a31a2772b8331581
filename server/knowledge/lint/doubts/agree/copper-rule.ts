import { assumedForLimits, fromReference } from '../../../../measure/correct/temperature.ts'
import { printLimits, printValue } from '../../../../measure/reading/print.ts'
import type { Knowledge } from '../../../knowledge.ts'
import type { Report } from '../../report.ts'
import { isFarFromUsual } from '../far-off-rule.ts'
import { addsUp, type Figure, figuresOf, isCopper, sharesPlace, sides } from '../figures.ts'

/** Two digits of a manual, and the 5 K by which its unnamed temperature may be off, come to this. */
const rounding = 0.05

/** One winding has one resistance: cold and warm limits of it are told from each other by copper (IEC 60028). */
export function copperRule(knowledge: Knowledge, report: Report): void {
  for (const [, machine] of knowledge.machines) {
    const figures = figuresOf(machine, knowledge).filter(
      (each) => addsUp(each) && !isFarFromUsual(each),
    )
    figures.forEach((figure, i) => {
      const cold = figures.find((other, o) => other !== figure && isColdOf(other, figure, o < i))
      const says = cold && (isCopper(figure) ? wrongWarm(figure, cold) : wrongHot(figure, cold))
      if (says) report.add(machine, figure.path, `${figure.part.id}: ${says}`)
    })
  }
}

/** Whether it is the same copper, touched at the same place, colder or written before. */
function isColdOf(cold: Figure, figure: Figure, before: boolean): boolean {
  if (cold.part !== figure.part || !isCopper(cold)) return false
  const isColder = isCopper(figure) ? heat(cold) < heat(figure) : true
  return (isColder || (before && heat(cold) === heat(figure))) && sharesPlace(cold, figure)
}

function wrongWarm(warm: Figure, cold: Figure): string | null {
  const carried = (side: 'low' | 'high') => {
    const value = cold.limits[side]
    return value === undefined ? undefined : fromReference(value, heat(warm), heat(cold))
  }
  const wrong = sides.find((side) => {
    const [given, asked] = [warm.limits[side], carried(side)]
    return given !== undefined && asked !== undefined && Math.abs(given / asked - 1) > rounding
  })
  if (wrong === undefined) return null
  const asked = printValue(carried(wrong) ?? 0, warm.quantity.unit)
  return (
    `the ${wrong} limit of ${warm.property}, ${warm.sheet[wrong]}, is not that of ${cold.property}, ${cold.sheet[wrong]}: ` +
    `copper reads ${asked} at ${heat(warm)} °C`
  )
}

/** Read as it comes, cold or hot, it must let the cold winding pass. */
function wrongHot({ property, limits, quantity }: Figure, cold: Figure): string | null {
  const [low, high] = [cold.limits.low ?? 0, cold.limits.high ?? 0]
  const passes =
    (limits.low ?? 0) <= low * (1 + rounding) && (limits.high ?? Infinity) >= high * (1 - rounding)
  if (passes) return null
  return (
    `the limits of ${property}, ${printLimits(limits, quantity.unit)}, must hold those of ${cold.property}, ` +
    `${printLimits(cold.limits, quantity.unit)}: it is read as it comes, hot or already cold`
  )
}

const heat = ({ sheet }: Figure) => sheet.at ?? assumedForLimits.celsius
