import { named } from '../../diagnosis/model/named.ts'
import { kindNameOf } from '../../knowledge/instantiate/check-names.ts'
import type { OverRow } from '../standing/over-rows.ts'
import type { Standing } from '../standing/standing.ts'
import { listed, percent, upperFirst } from '../words/sentences.ts'

/** Good ones are alike within this share, whatever the limits leave room for. Common practice. */
const alike = 0.1

/** Parts of the same role, read alike on each output: how far they lie apart. */
export function twinSentences({ kase }: Standing, rows: readonly OverRow[]): string[] {
  const groups = new Map<string, { name: string; value: number }[]>()
  for (const { card, judged } of rows) {
    const value = judged?.measured?.corrected
    const part = kase.machine.parts.find(({ id }) => id === card.part)
    if (value == null || part?.output === undefined || value <= 0) continue
    const { property, quantity } = card.measurand
    if (quantity.path === 'must not be') continue
    const kind = kindNameOf(card.id)
    const key = `${part.role} ${property} ${kind} ${card.spot?.connector === undefined}`
    const { name } = named(kase.parts, part.id)
    groups.set(key, [...(groups.get(key) ?? []), { name, value }])
  }
  return [...groups.values()].flatMap((group) => {
    const values = group.map(({ value }) => value)
    if (new Set(group.map(({ name }) => name)).size < 2) return []
    const apart = Math.max(...values) / Math.min(...values) - 1
    const names = upperFirst(listed(group.map(({ name }) => name)))
    return [
      apart <= alike
        ? `${names} are alike within ${percent(apart)}.`
        : `${names} lie ${percent(apart)} apart: good ones are alike within a tenth.`,
    ]
  })
}
