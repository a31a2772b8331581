import { minimalCutSets } from '../../../diagnosis/tree/cut-sets.ts'
import {
  type FaultTree,
  type Gate,
  gatesBottomUp,
  inputsNeeded,
} from '../../../diagnosis/tree/fault-tree.ts'
import { fits } from '../../fits.ts'
import { type DrawnTree, drawTree } from '../../instantiate/tree.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Complaint } from '../../schema/index.ts'
import type { Report } from '../report.ts'

/** A page shows the whole tree, and a gate that several share under each of them. */
const mostBranches = 5000

/** On every machine that a complaint fits, its tree can be drawn, and its cut sets be found. */
export function cutSetsRule(knowledge: Knowledge, report: Report): void {
  for (const [, complaint] of knowledge.complaints) {
    const machines = [...knowledge.machines.values()].filter((m) => fits(complaint, m))
    for (const machine of machines) {
      const drawn = drawTree(knowledge, complaint, machine)
      // A top without inputs is refused for that, by another rule.
      if (!drawn.gates.has(complaint.top)) continue
      const wrong = wrongWith({ top: complaint.top, gates: drawn.gates })
      if (wrong === null) continue
      const { gate, says } = wrong
      const place = placeOf(gate, complaint, drawn)
      report.add(complaint, place, `on ${machine.id} gate ${gate} ${says}`)
    }
  }
}

interface Wrong {
  /** As drawn. */
  readonly gate: string
  readonly says: string
}

/** Gates with their names, from the bottom up. */
type Gates = readonly (readonly [string, Gate])[]

/** The lowest gate with which something is wrong: what stands above it may owe it to that one. */
function wrongWith(tree: FaultTree): Wrong | null {
  const gates = gatesBottomUp(tree)
  return wrongVote(gates) ?? wrongBranches(gates) ?? wrongCutSets(tree, gates)
}

function wrongVote(gates: Gates): Wrong | null {
  for (const [name, gate] of gates) {
    const needed = inputsNeeded(gate)
    const { length } = gate.inputs
    if (needed <= length) continue
    return {
      gate: name,
      says: `needs ${needed} inputs and has ${length}, so it can never hold: lower k`,
    }
  }
  return null
}

function wrongBranches(gates: Gates): Wrong | null {
  const branches = new Map<string, number>()
  for (const [gate, { inputs }] of gates) {
    const sum = inputs.reduce((all, input) => all + (branches.get(input) ?? 1), 1)
    branches.set(gate, sum)
    if (sum <= mostBranches) continue
    const says =
      `has ${printed(sum)} branches, those that gates share counted under each, and at most ` +
      `${printed(mostBranches)} can be shown: share less, or split the complaint in two`
    return { gate, says }
  }
  return null
}

function wrongCutSets(tree: FaultTree, gates: Gates): Wrong | null {
  // Nearly every tree is sound, and then the gates below need not be looked at one by one.
  if (!isTooEntangled(tree)) return null
  const [blamed] =
    gates.find(([gate]) => isTooEntangled({ top: gate, gates: tree.gates }, searchNodes)) ?? []
  return { gate: blamed ?? tree.top, says: tooEntangled }
}

/** Nodes for the search for the gate to blame: many gates may have to be looked at. */
const searchNodes = 50_000

const tooEntangled =
  'is too entangled for its cut sets to be found: let fewer branches share the same parts, or split the complaint in two'

/** Whether not even the number of its cut sets can be found; only the heaviest of them are ever listed. */
function isTooEntangled(tree: FaultTree, maxNodes?: number): boolean {
  return minimalCutSets(tree, 0, maxNodes).kind === 'tooLarge'
}

function printed(count: number): string {
  if (count < 1e15) return count.toLocaleString('en-US')
  return `more than 10^${Math.floor(Math.log10(Math.min(count, Number.MAX_VALUE)))}`
}

/** Where the gate that was drawn is written. */
function placeOf(gate: string, complaint: Complaint, { copies }: DrawnTree): PropertyKey[] {
  const [written] = [...copies].find(([, of]) => of.some(({ name }) => name === gate)) ?? []
  if (written === undefined) return ['top']
  return [written in complaint.gates ? 'gates' : 'watched', written]
}
