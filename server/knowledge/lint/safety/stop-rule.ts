import { entry, named } from '../../../diagnosis/model/named.ts'
import { inputsOf, targetOf } from '../../instantiate/tree.ts'
import { throughOf } from '../../instantiate/where/path.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { CheckKind, Complaint, Machine } from '../../schema/index.ts'
import type { Report } from '../report.ts'

/** Nobody starts an engine unawares that its switch does not stop: whatever parts the stop circuit says so. */
export function stopRule(knowledge: Knowledge, report: Report): void {
  for (const [machine, parts] of partsThatStop(knowledge)) {
    for (const plug of plugsThatStop(machine, parts)) {
      if (machine.stop?.plugs.includes(plug)) continue
      const says = `with ${plug} apart the engine cannot be stopped: name it in stop, so that it is joined at the end of each check`
      report.add(machine, ['connectors', plug], says)
    }
  }
  const roles = rolesThatStop(knowledge)
  for (const [, check] of knowledge.checkKinds) {
    const why = partsTheStopCircuit(check, knowledge, roles)
    if (why === null || putsItBack(check, knowledge)) continue
    report.add(check, ['do'], `${why}: give it a set-up with stopOff, which puts it back`)
  }
}

function partsThatStop({ machines, partKinds }: Knowledge): Map<Machine, Machine['parts']> {
  return new Map(
    [...machines.values()].map((machine) => [
      machine,
      machine.parts.filter(({ kind }) => named(partKinds, kind).stops === true),
    ]),
  )
}

function rolesThatStop({ roles, partKinds }: Knowledge): Set<string> {
  const stopping = Object.entries(roles.roles).filter(([, { kinds }]) =>
    kinds.some((kind) => named(partKinds, kind).stops),
  )
  return new Set(stopping.map(([role]) => role))
}

/** Connectors that a part which stops the engine is read at, or through. */
function plugsThatStop({ parts }: Machine, stopping: Machine['parts']): Set<string> {
  const stops = new Set(stopping.map(({ id }) => id))
  return new Set(
    parts.flatMap(({ id, reach = [] }) =>
      reach
        .filter((each) => [id, ...throughOf(each)].some((part) => stops.has(part)))
        .flatMap(({ at }) => at ?? []),
    ),
  )
}

/** Words of a step that take the stop circuit apart, or bridge one that stops by opening. */
const partsIt =
  /\b(?:unplug|pull|take|part)\b[^.]*\bstop (?:wire|plug|circuit)\b|\bbridge\b[^.]*\brun (?:wire|line)\b/i

/** Why a check must take the stop circuit apart, as far as its file shows; null if it does not. */
function partsTheStopCircuit(
  { about, do: steps }: CheckKind,
  { complaints }: Knowledge,
  roles: ReadonlySet<string>,
): string | null {
  const said = steps.map((step) => partsIt.exec(step)?.[0]).find(Boolean)
  if (said !== undefined) return `the step "${said}" takes the stop circuit out of play`
  if (about.kind !== 'gate' || about.without === undefined) return null
  const { without } = about
  const below = [...complaints.values()].flatMap((complaint) => rolesBelow(complaint, without))
  return below.some((role) => roles.has(role)) ? `without ${without}, nothing stops it` : null
}

function rolesBelow({ gates, watched = {} }: Complaint, top: string): string[] {
  const seen = new Set<string>()
  const visit = (name: string): string[] => {
    const gate = gates[name] ?? watched[name]
    if (gate === undefined) return [name]
    if (seen.has(name)) return []
    seen.add(name)
    return inputsOf(gate).flatMap((input) => visit(targetOf(input)))
  }
  return visit(top)
}

function putsItBack({ setups = [] }: CheckKind, knowledge: Knowledge): boolean {
  return setups.some((id) => entry(knowledge.setups.setups, id).stopOff)
}
