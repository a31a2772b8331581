import { printLimits } from '../../../../measure/reading/print.ts'
import type { Knowledge } from '../../../knowledge.ts'
import type { Report } from '../../report.ts'
import { type Figure, figuresOf } from '../figures.ts'

/** Cylinders of one engine have parts of one make: what the sheet gives for one holds for the other. */
export function alikeRule(knowledge: Knowledge, report: Report): void {
  for (const [, machine] of knowledge.machines) {
    const first = new Map<string, Figure>()
    for (const figure of figuresOf(machine, knowledge)) {
      const { part, property, quantity, limits, path } = figure
      if (part.output === undefined) continue
      const of = `${part.kind} ${part.role} ${property}`
      const other = first.get(of) ?? figure
      first.set(of, other)
      if (said(figure) === said(other)) continue
      const { line } = report.locate(machine, other.path)
      const says =
        `${part.id}: ${property} is ${printLimits(limits, quantity.unit)} here, and of ${other.part.id}, its like, ` +
        `${printLimits(other.limits, quantity.unit)} on line ${line}: look which is right`
      report.add(machine, path, says)
    }
  }
}

const said = ({ limits, sheet }: Figure) => [limits.low, limits.high, sheet.at, sheet.rpm].join()
