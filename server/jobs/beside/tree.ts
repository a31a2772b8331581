import type { Gate } from '../../diagnosis/tree/fault-tree.ts'
import type { Standing } from '../standing/standing.ts'
import { readingInShort } from '../words/reading-words.ts'
import { percent, upperFirst } from '../words/sentences.ts'
import { isLive } from './live.ts'
import type { BranchView } from './view.ts'

/** The fault tree as nested branches. A gate that several gates share is drawn under each. */
export function presentTree(input: Standing): BranchView {
  const { tree } = input.kase.model
  return { ...branch(input, tree.top), open: true }
}

function branch(input: Standing, name: string): BranchView {
  const { kase, walk } = input
  const gate = kase.model.tree.gates.get(name)
  const card = kase.gates.get(name)
  const { now, cleared } = walk.branches.get(name)!
  return {
    says: upperFirst(card ? card.says : kase.faults.get(name)!.says),
    gate: gate && !card?.part ? gateWords(gate) : '',
    percent: percent(now),
    cleared,
    clearedBy: cleared ? clearedBy(input, name) : '',
    open: isLive(input, name),
    below: (gate?.inputs ?? []).map((each) => branch(input, each)),
  }
}

function clearedBy({ kase, judged, walk }: Standing, name: string): string {
  const check = walk.branches.get(name)!.clearedBy!
  const number = [...judged.keys()].indexOf(check) + 1
  return `cleared: ${readingInShort(kase, kase.checks.get(check)!, judged.get(check)!)} (reading ${number})`
}

function gateWords({ kind, k, inputs }: Gate): string {
  if (inputs.length < 2) return ''
  if (kind === 'atLeast') return `at least ${k} of these`
  return kind === 'and' ? 'all of these together' : 'any of these'
}
