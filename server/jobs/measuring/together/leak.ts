import { leakBounds } from '../../../measure/correct/shared-path.ts'
import { asRead } from './estimates.ts'
import { isEndToEnd, isUnwanted, type Pair, type Paths, through } from './paths.ts'
import type { Together } from './types.ts'

/** Line to line and line to ground of one winding: where and how large one leak would be. */
export function leakOf([one, other]: Pair, paths: Paths): Together[] {
  const [ground, line] = isUnwanted(one) ? [one, other] : [other, one]
  const [a, b] = [paths.get(ground), paths.get(line)]
  if (!a || !b || a.part !== b.part || !isEndToEnd(line)) return []
  if (!isUnwanted(ground)) return []
  // Another winding in the path to ground might be the one that leaks.
  if (!through(a).every((id) => through(b).includes(id))) return []
  if (ground.card.spot?.connector?.id !== line.card.spot?.connector?.id) return []
  const [A, R] = [asRead(ground).value, asRead(line).value]
  if (!(R > 0)) return []
  return [{ kind: 'leak', line, ground, ...leakBounds(R, A) }]
}
