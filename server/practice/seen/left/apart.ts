import { faultsBelow } from '../../../diagnosis/tree/fault-tree.ts'
import type { CheckCard } from '../../../knowledge/case.ts'
import { unplugId } from '../../../knowledge/instantiate/setup-cards.ts'
import { drawTree } from '../../../knowledge/instantiate/tree.ts'
import { throughOf } from '../../../knowledge/instantiate/where/path.ts'
import type { Knowledge } from '../../../knowledge/knowledge.ts'
import type { Machine, Part } from '../../../knowledge/schema/machine.ts'
import { doesOf, partOfFault } from '../../world/machine.ts'
import { partNamed } from '../../world/sheet.ts'
import type { Hidden } from '../hidden.ts'
import { kindOf } from '../kind.ts'

/** Connectors among these set-ups that are apart, without those that only keep the stop controls from working. */
export function plugsApart(
  { kase: { machine } }: Hidden,
  setups: readonly string[],
): readonly string[] {
  const harmless = new Set(machine.stop?.plugs)
  return Object.keys(machine.connectors).filter(
    (plug) => setups.includes(unplugId(plug)) && !harmless.has(plug),
  )
}

/**
 * Whether the engine does not run, or is not turned, with these connectors apart. Of a machine whose wiring nobody
 * has written down any of them is taken to keep it from running.
 */
export function keptFrom(
  act: 'running' | 'cranking',
  { knowledge, kase: { machine } }: Hidden,
  apart: readonly string[],
): readonly string[] {
  const circuit = knowledge.circuits.get(machine.id)
  if (circuit === undefined) return act === 'running' ? apart : []
  const { runsBy = [], turnsBy = [] } = circuit
  const needs = act === 'running' ? [...runsBy, ...turnsBy] : turnsBy
  return apart.filter((plug) => needs.includes(plug))
}

/**
 * Whether a gate of the tree holds by these connectors alone: some part below it, that a break would stop, hangs
 * on one of them. They are `gone round` where only what the check takes out of play hangs on them; `alone` where
 * the gate is about one part, that is cut off by them.
 */
export function holdsApart(
  { knowledge, kase: { complaint, machine } }: Hidden,
  gate: string,
  apart: readonly string[],
  without?: string,
): boolean | 'gone round' | 'alone' {
  const { gates, copies } = drawTree(knowledge, complaint, machine)
  const below = (name: string) => faultsBelow({ top: name, gates }, name)
  const away = new Set(
    without === undefined
      ? []
      : (copies.get(without) ?? []).flatMap(({ name }) => below(name)).map(partOfFault),
  )
  const faults = below(gate)
  const hanging = faults.filter((fault) => hangsOn(partNamed(machine, partOfFault(fault)), apart))
  // Whose only part it is shows what a good one does there: nothing, cut off.
  if (new Set(faults.map(partOfFault)).size === 1 && hanging.length > 0) return 'alone'
  const open = hanging.filter((fault) => isInTheWay(knowledge, machine, fault))
  if (open.some((fault) => !away.has(partOfFault(fault)))) return true
  return open.length > 0 && 'gone round'
}

/** What a connector that is apart does as well: it stands in the way of a current. */
function isInTheWay(knowledge: Knowledge, machine: Machine, fault: string): boolean {
  const { adds, addsTimes } = doesOf(knowledge, machine, fault) ?? {}
  return adds !== undefined || addsTimes !== undefined
}

/** Whether the part of a check, or one on the way to it, hangs on one of these connectors. */
export function wayIsApart(
  { knowledge, kase: { machine } }: Hidden,
  card: CheckCard,
  apart: readonly string[],
): boolean {
  const { about } = kindOf(knowledge, card)
  const own = machine.parts.find(({ id }) => id === card.part)
  if (about.kind !== 'property' || own === undefined) return false
  const reaches = (own.reach ?? []).filter((reach) => reach.for.includes(about.property))
  const way = new Set([own.id, ...reaches.flatMap(throughOf)])
  return machine.parts.some((part) => way.has(part.id) && hangsOn(part, apart))
}

/** Whether a check is about what turns the engine: some part that it watches hangs where only the starter does. */
export function isAboutTurning(hidden: Hidden, card: CheckCard): boolean {
  const { knowledge, kase } = hidden
  const { runsBy = [], turnsBy = [] } = knowledge.circuits.get(kase.machine.id) ?? {}
  const plugs = turnsBy.filter((plug) => !runsBy.includes(plug))
  const { about } = kindOf(knowledge, card)
  if (about.kind === 'property') return wayIsApart(hidden, card, plugs)
  const gates = about.kind === 'question' ? about.when.map(({ gate }) => gate) : [about.gate]
  return gates.some((gate) => kase.gates.has(gate) && holdsApart(hidden, gate, plugs) !== false)
}

function hangsOn({ plugs = [], reach = [] }: Part, apart: readonly string[]): boolean {
  const at = reach.flatMap((each) => (each.at === undefined ? [] : [each.at]))
  return [...plugs, ...at].some((plug) => apart.includes(plug))
}
