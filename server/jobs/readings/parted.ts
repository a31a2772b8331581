import type { Case, CheckCard } from '../../knowledge/case.ts'
import type { Judged } from '../measuring/judged.ts'
import { readWords } from '../words/reading-words.ts'
import { listed, lowerFirst, the } from '../words/sentences.ts'

/** A take that came out otherwise once a connector on the way was apart: what it may mean, in sentences. Empty of others. */
export function partedWords(
  { machine }: Pick<Case, 'machine'>,
  card: Pick<CheckCard, 'answers' | 'countedAs' | 'measurand'>,
  { parted }: Judged,
): string {
  if (parted === undefined) return ''
  const plugs = parted.plugs
    .slice(0, mostNamed)
    .map((id) => the(machine.connectors[id]?.name ?? id))
  const more = parted.plugs.length - plugs.length
  const names = listed(more > 0 ? [...plugs, `${more} more`] : plugs)
  const read = lowerFirst(readWords(card, parted.came))
  return `After ${names} had been apart it came back as “${read}”. Parting a connector wipes its pins and may have cured it, so this take weighs nothing. Look at those pins.`
}

/** So many connectors are named, and all others only counted. */
const mostNamed = 3
