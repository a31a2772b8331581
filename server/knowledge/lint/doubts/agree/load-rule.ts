import { printLimits } from '../../../../measure/reading/print.ts'
import type { Knowledge } from '../../../knowledge.ts'
import type { Report } from '../../report.ts'
import { addsUp, type Figure, figuresOf } from '../figures.ts'

/** What is fed by a winding gets the greater share of its volts, or the winding keeps most of them for itself. */
export function loadRule(knowledge: Knowledge, report: Report): void {
  for (const [, machine] of knowledge.machines) {
    const figures = figuresOf(machine, knowledge)
    for (const part of machine.parts) {
      if (part.fedBy === undefined) continue
      const load = windingOf(part.id, figures)
      const source = windingOf(part.fedBy, figures)
      const [most, least] = [load?.limits.high, source?.limits.low]
      if (!load || !source || most === undefined || least === undefined || most >= least) continue
      const { unit } = load.quantity
      const share = Math.floor((100 * most) / (most + least))
      const says =
        `${part.id}: its ${printLimits(load.limits, unit)} behind the ${printLimits(source.limits, unit)} of ${part.fedBy} ` +
        `get ${share} % of the volts at best, so the limits of one of them cannot be right`
      report.add(machine, load.path, says)
    }
  }
}

/** Its resistance from end to end, as cold as the sheet gives it. */
const windingOf = (id: string, figures: readonly Figure[]): Figure | undefined =>
  figures.find((each) => each.part.id === id && addsUp(each) && each.sheet.at === undefined)
