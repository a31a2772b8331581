import type { Case } from '../case.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Complaint, Machine } from '../schema/index.ts'
import { inOrder } from './order.ts'
import { readingsIn, type Scope } from './scope.ts'
import { sheetFor } from './sheet.ts'

/** What a check-over is called where others have a complaint. */
export const overTitle = 'Check-over'

const cases = new WeakMap<Machine, Map<string, Case>>()

/**
 * A case with no complaint and no tree: the readings of a scope, in the order in which they are made. Made
 * once for each scope and set of tools.
 */
export function overCase(
  knowledge: Knowledge,
  machine: Machine,
  scope: Scope,
  tools: readonly string[],
): Case {
  const kept = cases.get(machine) ?? new Map<string, Case>()
  cases.set(machine, kept)
  const name = JSON.stringify([scope, [...tools].sort()])
  const made = kept.get(name) ?? drawn(knowledge, machine, scope, tools)
  kept.set(name, made)
  return made
}

function drawn(
  knowledge: Knowledge,
  machine: Machine,
  scope: Scope,
  tools: readonly string[],
): Case {
  const cards = inOrder(readingsIn(knowledge, machine, scope, tools)).map(({ card }) => card)
  const { parts } = sheetFor(knowledge, machine)
  return {
    machine,
    complaint: noComplaint,
    model: {
      tree: { top: noComplaint.top, gates: new Map() },
      cutSets: [],
      checks: cards.map(({ id, minutes, outcomes }) => ({
        id,
        minutes,
        setups: [],
        outcomes,
        chances: [],
      })),
    },
    leftOut: 0,
    gates: new Map(),
    faults: new Map(),
    parts,
    checks: new Map(cards.map((card) => [card.id, card])),
    ways: new Map(),
    noWays: new Map(),
  }
}

/** Nobody complains. */
const noComplaint: Complaint = {
  id: 'check-over',
  title: overTitle,
  group: 'none',
  owner: '',
  needs: [],
  top: 'nothing',
  gates: {},
  elsewhere: { share: 0.5, says: '', source: 'from memory' },
  prove: {},
  home: { try: {}, never: [] },
}
