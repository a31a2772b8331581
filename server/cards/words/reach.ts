import { named } from '../../diagnosis/model/named.ts'
import type { Outline } from '../../diagnosis/outline/outline.ts'
import { listed, percent, sentence, the } from '../../jobs/words/sentences.ts'
import type { Case } from '../../knowledge/case.ts'

/** What a card can come to and what it leaves out, in sentences. */
export function reachWords(kase: Case, { shares, followed, left }: Outline): string[] {
  const { named: byName, grouped, outside, astray } = shares
  const ends = [
    [byName, 'in a named part'],
    [grouped, 'in a group of parts that cannot be told apart with these tools'],
    [outside, 'outside what is listed here'],
    [astray, 'in something else, where the card is wrong'],
  ] as const
  const said = ends
    .filter(([share]) => share > 0)
    .map(([share, where]) => `${percent(share)} ${where}`)
  return [
    `Of all such complaints with one cause, going by how often each comes in, this card ends: ${listed(said)}.`,
    ...leftWords(
      kase,
      followed.map(({ explanation }) => explanation),
      left,
      shares.left,
    ),
    ...(kase.model.cutSets.some(({ faults }) => faults.length > 1)
      ? ['Two faults at once are left out.']
      : []),
    'A check that all causes on the card answer alike is left out, or stands at an ending to make it sure. Chances hold for answers as they come out as a rule.',
  ]
}

function leftWords(
  { model, parts }: Case,
  followed: readonly number[],
  left: readonly number[],
  share: number,
): string[] {
  if (left.length === 0) return []
  const partsOf = (some: readonly number[]) =>
    new Set(some.flatMap((explanation) => model.cutSets[explanation]?.parts ?? []))
  const here = partsOf(followed)
  const away = [...partsOf(left)]
  const missing = away.filter((part) => !here.has(part)).map((part) => the(named(parts, part).name))
  const rarer = missing.length < away.length ? ['rarer failures of parts that it names'] : []
  return [sentence(`Left out, ${percent(share)}: ${listed([...missing, ...rarer])}`)]
}
