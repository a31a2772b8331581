import type { Model } from '../../../server/diagnosis/model/model.ts'
import type { FaultTree } from '../../../server/diagnosis/tree/fault-tree.ts'
import type { FaultCard } from '../../../server/knowledge/case.ts'
import { cutSetList } from '../../../server/knowledge/instantiate/cut-set-list.ts'

/** A fault alone, or two others together. */
const tree: FaultTree = {
  top: 'top',
  gates: new Map([
    ['top', { kind: 'or', inputs: ['part.0', 'either', 'both'] }],
    ['either', { kind: 'or', inputs: ['other.2'] }],
    ['both', { kind: 'and', inputs: ['part.1', 'third.3'] }],
  ]),
}

const rates = [40, 80, 25, 90]

/** A model whose four faults have their rates multiplied by these. */
export function drawCutSets(factors: readonly number[]): Model {
  const names = ['part.0', 'part.1', 'other.2', 'third.3']
  const faults = new Map(
    names.map((id, i): [string, FaultCard] => [
      id,
      {
        id,
        part: id.split('.')[0]!,
        says: '',
        rate: rates[i]! * factors[i]!,
        pronoun: 'it' as const,
        rateSource: '',
        comesAndGoesWith: [],
      },
    ]),
  )
  return { tree, cutSets: cutSetList(tree, faults, 0.2).cutSets, checks: [] }
}
