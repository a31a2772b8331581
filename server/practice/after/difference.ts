import { minutes, sentence, titleOf } from '../../jobs/words/sentences.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import type { Share } from '../tool/difference.ts'

/**
 * Where the difference in minutes came from, three sentences at most: how large it is, what the round took longer for,
 * and what the tool did. The minutes of the second less those of the third are those of the first, to the tenth.
 *
 * @param own minutes of the round
 * @param its minutes of the tool
 */
export function differenceWords(
  own: number,
  its: number,
  shares: readonly Share[],
): readonly string[] {
  const longer = tenths(own) - tenths(its)
  const shown = roundedTo(longer, shares)
  const more = shown.filter((share) => share.tenths > 0)
  const less = shown.filter((share) => share.tenths < 0)
  return [
    longer === 0
      ? 'You took as many minutes as the tool.'
      : `You took ${inMinutes(longer)} ${longer > 0 ? 'more' : 'less'} than the tool.`,
    ...(more.length === 0 ? [] : [sentence(`You spent more: ${more.map(spentOn).join('; ')}`)]),
    ...(less.length === 0
      ? []
      : [sentence(`The tool spent more: ${less.map(spentOn).join('; ')}`)]),
  ]
}

interface Shown extends Share {
  readonly tenths: number
}

const tenths = (of: number): number => Math.round(10 * of)
const inMinutes = (count: number): string => minutes(Math.abs(count) / 10)

/** In whole tenths that add up as what is shown does; what rounding leaves over goes to the largest. */
function roundedTo(longer: number, shares: readonly Share[]): readonly Shown[] {
  const shown = shares.map((share): Shown => ({ ...share, tenths: tenths(share.minutes) }))
  const over = longer - shown.reduce((sum, share) => sum + share.tenths, 0)
  const [largest] = shown.toSorted((a, b) => Math.abs(b.minutes) - Math.abs(a.minutes))
  return shown.map((share) =>
    share === largest ? { ...share, tenths: share.tenths + over } : share,
  )
}

/** "5 min on waiting" */
const spentOn = (share: Shown): string => `${inMinutes(share.tenths)} on ${words[share.on](share)}`

const words: Readonly<Record<Share['on'], (share: Share) => string>> = {
  'own checks': ({ checks }) => only(checks, 'it'),
  'tool checks': ({ checks }) => only(checks, 'you'),
  again: ({ idle }) => `checks made once more${idle ? ', which changed next to nothing' : ''}`,
  way: () => 'making ready and putting back',
  waiting: () => 'waiting',
  asking: () => 'reaching the owner once they had gone',
  barred: () => 'checks that could not be made as the machine stood',
  parts: () => 'parts that were good',
}

/** "3 checks that it did not make, the longest of them “Plug look” with 2 min" */
function only([longest, ...others]: readonly CheckCard[], who: 'it' | 'you'): string {
  if (longest === undefined) return ''
  const title = `“${titleOf(longest.title, false)}”`
  return others.length === 0
    ? `a check that ${who} did not make, ${title}`
    : `${others.length + 1} checks that ${who} did not make, the longest of them ${title} with ${minutes(longest.minutes)} of its own`
}
