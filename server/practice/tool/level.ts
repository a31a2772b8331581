import { checkNamed } from '../../diagnosis/belief/belief.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Opened } from '../record/events.ts'
import { hiddenOf } from '../round/standing.ts'
import { shows } from '../seen/by-wiring.ts'
import type { Hidden } from '../seen/hidden.ts'
import { type ToolWalk, toolWalk } from './walk.ts'

/** So many draws of a seed are walked to find an easy or a hard one among them. */
const draws = 5

/** What no ohms can settle is as hard as so many checks more. From memory. */
const withoutOhms = 4

/** Which draw of its seed a round begins with: the first, or the one that the tool finds easiest or hardest. */
export async function drawFor(
  knowledge: Knowledge,
  wish: Omit<Opened, 'draw' | 'kind' | 'who'>,
): Promise<number> {
  if (wish.level === 'any') return 0
  const found: { readonly draw: number; readonly hardness: number }[] = []
  for (let draw = 0; draw < draws; draw += 1) {
    const hidden = hiddenOf(knowledge, { ...wish, draw })
    if (hidden !== null) found.push({ draw, hardness: hardness(hidden, await toolWalk(hidden)) })
  }
  const sign = wish.level === 'hard' ? -1 : 1
  return found.sort((a, b) => sign * (a.hardness - b.hardness))[0]?.draw ?? 0
}

/** How many checks the tool itself needs, and more where no ohms of the way there show what is hidden. */
export function hardness({ kase, cutSet }: Hidden, { steps, right }: ToolWalk): number {
  const byOhms = steps.some(
    ({ card }) =>
      card.measurand?.quantity.setting === 'resistance' &&
      shows(kase.model, checkNamed(kase.model, card.id).id, cutSet),
  )
  return steps.length + (byOhms ? 0 : withoutOhms) + (right ? 0 : withoutOhms)
}
