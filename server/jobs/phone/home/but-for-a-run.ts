import { sentencesIn } from '../../../knowledge/instantiate/words.ts'
import type { Home } from '../../../knowledge/schema/phone/home.ts'

/**
 * What goes back, a sentence each, but for what only serves a run: no tap is opened to be shut.
 *
 * @param opened by name in `halfOpen`: what is not closed now, since it is left so or is opened next
 */
export function butForARun(
  back: readonly string[],
  { toRun }: Pick<Home, 'toRun'>,
  opened: readonly string[],
): string[] {
  const left = new Set(opened.flatMap((name) => toRun[name] ?? []))
  return back.flatMap(sentencesIn).filter((says) => !left.has(says))
}
