import { toTheEnd } from '../../server/diagnosis/testability/steps.ts'
import { summedUp, type Testability } from '../../server/diagnosis/testability/testability.ts'
import { typicalWalks } from '../../server/diagnosis/testability/typical-walks.ts'
import type { Case } from '../../server/knowledge/case.ts'

const known = new WeakMap<Case, Testability>()

/** How the single faults of a case end, with every check possible. Worked out once. */
export function endsOf(kase: Case): Testability {
  const ends = known.get(kase) ?? walked(kase)
  known.set(kase, ends)
  return ends
}

function walked({ model }: Case): Testability {
  const walks = typicalWalks(model, singleFaults(model.cutSets), new Set())
  return summedUp(model, toTheEnd(walks))
}

const singleFaults = (cutSets: readonly { readonly faults: readonly string[] }[]): number[] =>
  cutSets.flatMap(({ faults }, c) => (faults.length === 1 ? [c] : []))

/** The same as YAML to read: faults that end named by their part, then those that end in a group, by group. */
export function printedEnds(kase: Case): string {
  const { model, complaint, machine } = kase
  const { groups, missed } = endsOf(kase)
  const grouped = new Map(groups.map(({ fault, parts }) => [fault, parts.toSorted().join(', ')]))
  const faults = singleFaults(model.cutSets).map((c) => model.cutSets[c]!.faults[0]!)
  const named = faults.filter((fault) => !grouped.has(fault) && !missed.includes(fault))
  const sections = {
    named: gathered(named, (fault) => fault.split('.')),
    'in a group': gathered([...grouped.keys()], (fault) => [grouped.get(fault)!, fault]),
    lost: gathered(missed, (fault) => fault.split('.')),
  }
  return [
    `${complaint.id} on ${machine.id}:`,
    ...Object.entries(sections)
      .filter(([, lines]) => lines.length > 0)
      .flatMap(([title, lines]) => [`  ${title}:`, ...lines]),
    '',
  ].join('\n')
}

/** One line for each head, with all that stands under it. */
function gathered(faults: readonly string[], headed: (fault: string) => string[]): string[] {
  const lines = new Map<string, string[]>()
  for (const fault of faults) {
    const [head, tail] = headed(fault) as [string, string]
    lines.set(head, [...(lines.get(head) ?? []), tail])
  }
  return [...lines].map(([head, tails]) => `    ${head}: ${tails.join(', ')}`)
}
