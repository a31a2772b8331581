import { named } from '../../diagnosis/model/named.ts'
import type { Gate } from '../../diagnosis/tree/fault-tree.ts'
import type { Standing } from '../standing/standing.ts'
import { fellBy } from '../words/branch-words.ts'
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
  const { says } = card ?? named(kase.faults, name)
  const { now, cleared, clearedBy } = named(walk.branches, name)
  return {
    says: upperFirst(says),
    gate: gate && !card?.part ? gateWords(gate) : '',
    percent: percent(now),
    cleared,
    clearedBy: clearedBy === undefined ? '' : clearedWords(input, name, clearedBy),
    open: isLive(input, name),
    below: (gate?.inputs ?? []).map((each) => branch(input, each)),
  }
}

function clearedWords(input: Standing, branch: string, check: string): string {
  const { kase, judged } = input
  const number = [...judged.keys()].indexOf(check) + 1
  const read = readingInShort(kase, named(kase.checks, check), named(judged, check))
  return `${fellBy(input, branch, check)}: ${read} (reading ${number})`
}

function gateWords({ kind, k, inputs }: Gate): string {
  if (inputs.length < 2) return ''
  if (kind === 'atLeast') return `at least ${k} of these`
  return kind === 'and' ? 'all of these together' : 'any of these'
}
