import type { Knowledge } from '../../knowledge.ts'
import type { PartKind } from '../../schema/index.ts'
import { known, type Report } from '../report.ts'

/** What is looked at instead of a measurement, or beside one, names one of its own kind. */
export function insteadRule({ partKinds }: Knowledge, report: Report): void {
  for (const [, kind] of partKinds) {
    for (const [property, says] of Object.entries(kind.properties)) {
      for (const name of ['unless', 'beside'] as const) {
        const other = says[name]
        if (other === undefined || measuredOf(kind).includes(other)) continue
        const wrong = `${other} is not measured on this kind: ${known(measuredOf(kind))}`
        report.add(kind, ['properties', property, name], wrong)
      }
    }
  }
}

const measuredOf = ({ properties }: PartKind): string[] =>
  Object.keys(properties).filter((name) => properties[name]?.quantity !== 'answers')
