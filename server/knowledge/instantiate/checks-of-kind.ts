import { named } from '../../diagnosis/model/named.ts'
import { type ByAbout, byAbout } from '../by-about.ts'
import type { About, CheckKind } from '../schema/check-kind.ts'
import type { Complaint, Machine, PartKind } from '../schema/index.ts'
import type { Part } from '../schema/machine.ts'
import { nameOf, numbered } from './check-names.ts'
import { keptFor } from './kept-for.ts'
import type { PlannedCheck } from './planned-check.ts'
import type { DrawnTree } from './tree.ts'
import { onlyOutput, partsOf, swapsOf } from './where/outputs.ts'
import { reachesFor } from './where/spot.ts'
import { choicesOf } from './where/which.ts'

interface Context {
  readonly complaint: Complaint
  readonly machine: Machine
  readonly tree: DrawnTree
  readonly partKinds: ReadonlyMap<string, PartKind>
}

/** Every check that a kind makes on this machine for this complaint; none where it does not fit. */
export function checksOfKind(kind: CheckKind, setting: Context): PlannedCheck[] {
  return numbered(byAbout(makers, kind.about, kind, setting))
}

/** As much of a complaint as says how often its gates are there. */
type Written = Pick<Complaint, 'gates' | 'watched'>

/**
 * Every reading that a kind takes on this machine, whatever is complained of, under the names it has in
 * the cases of these complaints; none of a kind that is not measured.
 */
export function readingsOfKind(
  kind: CheckKind,
  machine: Machine,
  partKinds: Context['partKinds'],
  complaints: readonly Written[],
): PlannedCheck[] {
  const { about } = kind
  if (about.kind === 'property') {
    const planned = planOfProperty(about, kind, machine, partKinds)
    return numbered(planned.filter(({ limitsOf }) => limitsOf !== undefined))
  }
  if (about.kind !== 'gate' || about.measured === undefined) return []
  const { gate, measured } = about
  const perOutput = complaints.some(
    ({ gates, watched = {} }) => (gates[gate] ?? watched[gate])?.per === 'output',
  )
  const outputs = perOutput ? machine.outputs.map(({ id }) => id) : [undefined]
  return numbered(
    outputs.flatMap((output) =>
      planMeasured({ kind, id: nameOf(kind.id, output), ...outputOf(output) }, measured, machine),
    ),
  )
}

/** Each kind of check says itself where it is made; nothing else branches on the kind. */
const makers: ByAbout<[kind: CheckKind, setting: Context], readonly PlannedCheck[]> = {
  property: planProperty,
  gate: planGate,
  question: planQuestion,
  which: planWhich,
}

function planProperty(
  about: Extract<About, { kind: 'property' }>,
  kind: CheckKind,
  { machine, partKinds, tree }: Context,
): readonly PlannedCheck[] {
  const { within } = about
  if (within && !within.some((gate) => tree.copies.get(gate)?.length)) return []
  return planOfProperty(about, kind, machine, partKinds)
}

/** By the kinds of part that there are, and by machine: what is complained of makes no difference to them. */
const plansFor = keptFor(
  (_partKinds: Context['partKinds'], _machine: Machine) => new Map<CheckKind, PlannedCheck[]>(),
)

/** One check for each part that has the property, at each place where it is read. */
function planOfProperty(
  about: Extract<About, { kind: 'property' }>,
  kind: CheckKind,
  machine: Machine,
  partKinds: Context['partKinds'],
): readonly PlannedCheck[] {
  const plans = plansFor(partKinds, machine)
  const planned = plans.get(kind) ?? plannedOfProperty(about, kind, machine, partKinds)
  plans.set(kind, planned)
  return planned
}

function plannedOfProperty(
  about: Extract<About, { kind: 'property' }>,
  kind: CheckKind,
  machine: Machine,
  partKinds: Context['partKinds'],
): PlannedCheck[] {
  const { property } = about
  return machine.parts
    .filter((part) => about.roles === undefined || about.roles.includes(part.role))
    .flatMap((part): PlannedCheck[] => {
      const known = named(partKinds, part.kind).properties[property]
      if (known === undefined) return []
      const whole = { id: nameOf(kind.id, part.id), kind, part, ...outputOf(onlyOutput(part)) }
      const measured = known.quantity !== 'answers'
      const sheet = part.limits?.[property]
      if (measured && sheet === undefined) return []
      if (!isLookedAt(known, part)) return []
      const reaches = reachesFor(part, property)
      // What is looked at needs no place of its own: the part's own place will do.
      if (!measured && reaches.length === 0) return [whole]
      return reaches.map((reach) => ({
        ...whole,
        id: nameOf(kind.id, part.id, reach.at, reach.output),
        reach,
        ...outputOf(reach.output ?? onlyOutput(part)),
        ...(measured && sheet && { limitsOf: { part, property, sheet } }),
      }))
    })
}

/** What is looked at where nothing is measured instead, or only beside what is. */
function isLookedAt({ unless, beside }: PartKind['properties'][string], { limits = {} }: Part) {
  const isMeasured = (property: string) => limits[property] !== undefined
  return !(unless && isMeasured(unless)) && (beside === undefined || isMeasured(beside))
}

function planGate(
  about: Extract<About, { kind: 'gate' }>,
  kind: CheckKind,
  { machine, tree }: Context,
): PlannedCheck[] {
  if (about.without !== undefined && !tree.copies.get(about.without)?.length) return []
  return (tree.copies.get(about.gate) ?? []).flatMap((copy): PlannedCheck[] => {
    const place = placeOf(kind, machine, copy.output)
    const base = { kind, gate: copy.name, ...outputOf(copy.output), ...place }
    const id = nameOf(kind.id, copy.output)
    if (about.measured !== undefined) return planMeasured({ ...base, id }, about.measured, machine)
    if (about.replacing !== undefined) {
      const parts = partsOf(machine, about.replacing, copy.output)
      return parts.map((part) => ({ ...base, id: nameOf(kind.id, part.id), part }))
    }
    if (about.swapping !== undefined) {
      const swaps = swapsOf(machine, about.swapping, copy.output)
      return swaps.map((swap) => ({
        ...base,
        id: swaps.length === 1 ? id : nameOf(id, swap[1].id),
        swap,
      }))
    }
    return [{ ...base, id }]
  })
}

function planMeasured(
  base: PlannedCheck,
  { role, property }: { role: string; property: string },
  machine: Machine,
): PlannedCheck[] {
  return partsOf(machine, role, base.output).flatMap((part) => {
    const sheet = part.limits?.[property]
    if (sheet === undefined) return []
    const limitsOf = { part, property, sheet }
    return reachesFor(part, property, base.output).map((reach) => ({
      ...base,
      part,
      reach,
      limitsOf,
    }))
  })
}

function planQuestion(
  about: Extract<About, { kind: 'question' }>,
  kind: CheckKind,
  { machine, tree }: Context,
): PlannedCheck[] {
  const isThere = (gate: string) => (tree.copies.get(gate) ?? []).length > 0
  const asks = about.when.some(({ gate }) => isThere(gate)) && (about.within?.some(isThere) ?? true)
  return asks ? [{ id: kind.id, kind, ...placeOf(kind, machine) }] : []
}

function planWhich(
  { gate }: Extract<About, { kind: 'which' }>,
  kind: CheckKind,
  { tree }: Context,
): PlannedCheck[] {
  const choices = choicesOf(gate, tree)
  return choices.length === 0 ? [] : [{ id: kind.id, kind, choices }]
}

/** The place that a kind names, on this machine; nothing where it names none, or the machine has none. */
function placeOf(
  { place }: CheckKind,
  machine: Machine,
  output?: string,
): Pick<PlannedCheck, 'beside' | 'reach'> {
  const [beside] = place === undefined ? [] : partsOf(machine, place.role, output)
  if (beside === undefined) return {}
  const [reach] = place?.property === undefined ? [] : reachesFor(beside, place.property, output)
  return reach === undefined ? { beside } : { beside, reach }
}

function outputOf(output: string | undefined): { output?: string } {
  return output === undefined ? {} : { output }
}
