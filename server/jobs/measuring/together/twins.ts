import type { Machine } from '../../../knowledge/schema/machine.ts'
import { twins } from '../../../measure/correct/shared-path.ts'
import { estimate } from './estimates.ts'
import { isUnwanted, type Pair, type Path, type Paths, through } from './paths.ts'
import type { Read, Together } from './types.ts'

/** Each pair of twins once for each property, at like places where there is a choice. */
export function twinsAmong(machine: Machine, pairs: readonly Pair[], paths: Paths): Together[] {
  const seen = new Set<string>()
  const fitting = pairs.filter(([one, other]) =>
    areTwins(paths.get(one), paths.get(other), one, other),
  )
  const sameWay = ([one, other]: Pair) =>
    one.card.spot?.connector?.id === other.card.spot?.connector?.id ? 0 : 1
  return fitting
    .toSorted((a, b) => sameWay(a) - sameWay(b))
    .flatMap(([one, other]): Together[] => {
      const order = machine.parts.findIndex(({ id }) => id === one.card.part)
      const later = machine.parts.findIndex(({ id }) => id === other.card.part)
      const [first, second] = order < later ? [one, other] : [other, one]
      const name = [first.card.part, second.card.part, first.by.property].join()
      if (seen.has(name)) return []
      const [a, b] = [estimate(first), estimate(second)]
      if (!(a.value > 0 && b.value > 0)) return []
      seen.add(name)
      return [{ kind: 'twins', one: first, other: second, ratio: twins(a, b) }]
    })
}

function areTwins(a: Path | undefined, b: Path | undefined, one: Read, other: Read): boolean {
  if (!a || !b || a.part === b.part) return false
  const [x, y] = [one.by, other.by]
  return (
    a.part.kind === b.part.kind &&
    a.part.role === b.part.role &&
    x.property === y.property &&
    !isUnwanted(one) &&
    x.limits.low === y.limits.low &&
    x.limits.high === y.limits.high &&
    through(a).length === through(b).length
  )
}
