import { parseQuantityText } from '../../../measure/reading/parse.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Machine, PartKind } from '../../schema/index.ts'
import { known, type Report } from '../report.ts'
import { wrongWithText } from './quantity-words.ts'

/** A crank is one that can turn, and a moment of it is known in another measure only where there are two. */
export function crankRule(knowledge: Knowledge, report: Report): void {
  for (const [, machine] of knowledge.machines) {
    for (const says of wrongWithCrank(machine)) report.add(machine, ['crank'], says)
  }
  for (const [, kind] of knowledge.partKinds) {
    for (const [property, { as }] of Object.entries(kind.properties)) {
      if (as === undefined || isOtherMeasure(property, as, kind, knowledge)) continue
      const others = Object.keys(kind.properties).filter((other) =>
        isOtherMeasure(property, other, kind, knowledge),
      )
      const says =
        others.length === 0
          ? 'this kind has no such moment in the other measure: leave out as'
          : `${as} is not the same moment in the other measure: ${known(others)}`
      report.add(kind, ['properties', property, 'as'], says)
    }
  }
}

function wrongWithCrank({ crank }: Machine): string[] {
  if (crank === undefined) return []
  const { stroke, rod } = crank
  const texts = Object.entries({ stroke, rod }).flatMap(([name, text]) => {
    const wrong = wrongWithText(text, 'mm')
    return wrong === null ? [] : [`${name} is given in mm: ${wrong}`]
  })
  const [up, long] = [stroke, rod].map(parseQuantityText)
  if (texts.length > 0 || !up || !long || long.value > up.value / 2) return texts
  return [`no crank of ${stroke} turns with a rod of ${rod}: a rod is longer than half the stroke`]
}

function isOtherMeasure(
  one: string,
  other: string,
  { properties }: PartKind,
  { quantities }: Knowledge,
): boolean {
  const [here, there] = [one, other].map((name) => {
    const quantity = properties[name]?.quantity
    return quantity === undefined ? undefined : quantities[quantity]?.crank
  })
  return here !== undefined && there !== undefined && here !== there
}
