import { entry } from '../../diagnosis/model/named.ts'
import type { Knowledge } from '../knowledge.ts'
import type { CheckKind } from '../schema/index.ts'
import type { Chances } from '../schema/shared.ts'
import { known, type Report } from './report.ts'

/** Written to two or three digits, a row may miss 1 by rounding, not by more. */
const tolerance = 1e-6

/** Every row of chances is over outcomes that the check has, and sums to 1. */
export function chancesRule(knowledge: Knowledge, report: Report): void {
  for (const [, kind] of knowledge.partKinds) {
    kind.modes.forEach((mode, m) => {
      for (const [property, row] of Object.entries(mode.shows)) {
        const { quantity } = entry(kind.properties, property)
        const outcomes = outcomesOfProperty(knowledge, property, quantity)
        const path = ['modes', m, 'shows', property]
        for (const says of wrongWith(row, outcomes)) report.add(kind, path, `${property}: ${says}`)
      }
    })
  }
  for (const [, check] of knowledge.checkKinds) {
    for (const [path, row] of rowsOf(check)) {
      const outcomes = outcomesOfCheck(knowledge, check)
      for (const says of wrongWith(row, outcomes))
        report.add(check, path, `${path.join('.')}: ${says}`)
    }
    for (const says of wrongWithOnOne(check)) report.add(check, ['answers'], says)
    for (const says of wrongWithSpark(check)) report.add(check, ['about', 'spark'], says)
  }
}

/** What an answer counts as on a machine with one output is an answer that there is there. */
function wrongWithOnOne({ answers = [] }: CheckKind): string[] {
  const there = answers.filter(({ onOne }) => onOne === undefined).map(({ id }) => id)
  return answers.flatMap(({ id, onOne }) =>
    onOne === undefined || there.includes(onOne)
      ? []
      : `${id}: on one output it counts as "${onOne}", which is not offered there: ${known(there)}`,
  )
}

/** Every answer has its own least spark, and one of them is that to none. */
function wrongWithSpark({ about, answers = [] }: CheckKind): string[] {
  if (about.kind !== 'gate' || about.spark === undefined) return []
  const outcomes = answers.map(({ id }) => id)
  const strange = Object.keys(about.spark).filter((name) => !outcomes.includes(name))
  const least = outcomes.flatMap((id) => about.spark?.[id] ?? [])
  const isWhole = new Set(least).size === outcomes.length && least.includes(0)
  return [
    ...strange.map((name) => `spark: no outcome is called "${name}": ${known(outcomes)}`),
    ...(isWhole ? [] : ['spark: give every answer a least spark of its own, and one of them 0']),
  ]
}

function wrongWith(row: Chances, outcomes: readonly string[]): string[] {
  const sum = Object.values(row).reduce((a, b) => a + b, 0)
  const strange = Object.keys(row).filter((name) => !outcomes.includes(name))
  return [
    ...strange.map((name) => `no outcome is called "${name}": ${known(outcomes)}`),
    ...(Math.abs(sum - 1) > tolerance
      ? [`the chances sum to ${Number(sum.toFixed(6))}; make them sum to 1`]
      : []),
  ]
}

function outcomesOfCheck(knowledge: Knowledge, check: CheckKind): readonly string[] {
  if (check.answers) return check.answers.map(({ id }) => id)
  const property = measuredProperty(check)
  if (property === undefined) return []
  const kinds = [...knowledge.partKinds.values()]
  const [found] = kinds.flatMap((kind) => kind.properties[property] ?? [])
  return found ? outcomesOfProperty(knowledge, property, found.quantity) : []
}

function outcomesOfProperty(
  knowledge: Knowledge,
  property: string,
  quantity: string,
): readonly string[] {
  if (quantity !== 'answers') return entry(knowledge.quantities, quantity).bands
  const readers = [...knowledge.checkKinds.values()].filter(
    ({ about }) =>
      (about.kind === 'property' && about.property === property) ||
      (about.kind === 'gate' && about.shows === property),
  )
  return [...new Set(readers.flatMap((check) => check.answers?.map(({ id }) => id) ?? []))]
}

/** The property a check reads off a meter or looks at, if it reads one. */
export function measuredProperty({ about }: CheckKind): string | undefined {
  if (about.kind === 'property') return about.property
  return about.kind === 'gate' ? about.measured?.property : undefined
}

function rowsOf({ about }: CheckKind): (readonly [readonly PropertyKey[], Chances])[] {
  if (about.kind === 'gate') {
    return [
      [['about', 'holds'], about.holds],
      [['about', 'holdsNot'], about.holdsNot],
      ...(about.elsewhere ? [[['about', 'elsewhere'], about.elsewhere] as const] : []),
    ]
  }
  if (about.kind === 'question') {
    return [
      ...about.when.map(({ chances }, i) => [['about', 'when', i, 'chances'], chances] as const),
      [['about', 'otherwise'], about.otherwise],
    ]
  }
  if (about.kind === 'which') return []
  return [
    [['about', 'healthy'], about.healthy],
    ...(about.awkward ? [[['about', 'awkward'], about.awkward] as const] : []),
    ...(about.elsewhere ? [[['about', 'elsewhere'], about.elsewhere] as const] : []),
  ]
}
