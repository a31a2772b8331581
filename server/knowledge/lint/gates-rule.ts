import { entry } from '../../diagnosis/model/named.ts'
import { inputsOf, targetOf } from '../instantiate/tree.ts'
import type { Knowledge } from '../knowledge.ts'
import type { ComplaintGate } from '../schema/complaint.ts'
import type { Complaint } from '../schema/index.ts'
import type { Report } from './report.ts'

/** Gates are of one kind, hang together without loops, and are reached from the top or watched. */
export function gatesRule(knowledge: Knowledge, report: Report): void {
  for (const [, complaint] of knowledge.complaints) {
    const add = (section: string, id: string, says: string) =>
      report.add(complaint, [section, id], says)
    for (const [section, gates] of sections(complaint)) {
      for (const [id, gate] of Object.entries(gates)) {
        for (const says of wrongWith(gate)) add(section, id, `gate ${id}: ${says}`)
        if (leadsTo(complaint, id).has(id)) add(section, id, `gate ${id} leads back to itself`)
      }
    }
    const reached = leadsTo(complaint, complaint.top).add(complaint.top)
    for (const id of Object.keys(complaint.gates)) {
      if (!reached.has(id)) {
        add('gates', id, `nothing reaches gate ${id} from the top: use it, or move it to watched`)
      }
    }
    const used = watchedByChecks(knowledge)
    const watched = Object.keys(complaint.watched ?? {})
    for (const id of watched) {
      const needed = watched.some((w) => leadsTo(complaint, w).has(id))
      if (!used.has(id) && !needed) add('watched', id, `no check watches gate ${id}`)
    }
  }
}

/** The gates of a complaint by name, those that are only watched among them. */
export function writtenGates(complaint: Complaint): Readonly<Record<string, ComplaintGate>> {
  return { ...complaint.gates, ...complaint.watched }
}

/** The gates among the inputs of a gate. */
export function gatesUnder(
  gate: ComplaintGate,
  all: Readonly<Record<string, ComplaintGate>>,
): string[] {
  return inputsOf(gate)
    .map(targetOf)
    .filter((target) => target in all)
}

function sections(complaint: Complaint): (readonly [string, Record<string, ComplaintGate>])[] {
  return [
    ['gates', complaint.gates],
    ['watched', complaint.watched ?? {}],
  ]
}

function wrongWith(gate: ComplaintGate): string[] {
  const kinds = [gate.or, gate.and, gate.atLeast].filter((each) => each !== undefined)
  if (kinds.length !== 1) return ['write exactly one of or, and, atLeast']
  const inputs = inputsOf(gate)
  const wrong: string[] = []
  if (gate.or && inputs.some((input) => 'each' in input))
    wrong.push('write any, not each, under or')
  if (gate.and && inputs.some((input) => 'any' in input)) {
    wrong.push('write each, not any, under and')
  }
  if (gate.per === undefined && gate.says.includes('{output}')) {
    wrong.push('{output} needs per: output')
  }
  return wrong
}

/** The gates at or below the inputs of a gate. */
function leadsTo(complaint: Complaint, from: string): Set<string> {
  const all = writtenGates(complaint)
  const found = new Set(gatesUnder(entry(all, from), all))
  // What is added while the loop runs is still met by it.
  for (const id of found) {
    for (const each of gatesUnder(entry(all, id), all)) found.add(each)
  }
  return found
}

function watchedByChecks(knowledge: Knowledge): Set<string> {
  const names = [...knowledge.checkKinds.values()].flatMap(({ about }) => {
    if (about.kind === 'which') return [about.gate]
    if (about.kind === 'gate') return [about.gate, about.without]
    return about.kind === 'question' ? about.when.map(({ gate }) => gate) : []
  })
  return new Set(names.filter((name) => name !== undefined))
}
