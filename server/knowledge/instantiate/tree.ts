import { entry, named } from '../../diagnosis/model/named.ts'
import type { Gate } from '../../diagnosis/tree/fault-tree.ts'
import type { FaultCard, GateCard, OwnersMend } from '../case.ts'
import { hasAll } from '../fits.ts'
import type { Knowledge } from '../knowledge.ts'
import type { ComplaintGate, GateInput } from '../schema/complaint.ts'
import type { Complaint, Machine } from '../schema/index.ts'
import type { Part } from '../schema/machine.ts'
import type { Mode, Rate } from '../schema/part-kind.ts'
import { cautionCards } from './caution-cards.ts'
import { isTwin, onlyOutput, outputsServed, partsOf } from './where/outputs.ts'
import { fill, fillingsOf, sentencesIn } from './words.ts'

/** A complaint's gates, drawn out for the parts and outputs of one machine. */
export interface DrawnTree {
  readonly gates: ReadonlyMap<string, Gate>
  readonly gateCards: ReadonlyMap<string, GateCard>
  readonly faultCards: ReadonlyMap<string, FaultCard>
  /** The copies of each gate of the complaint: one, or one an output. Gates with no input have none. */
  readonly copies: ReadonlyMap<string, readonly GateCopy[]>
}

export interface GateCopy {
  readonly name: string
  readonly output?: string
}

/**
 * Draws all gates of a complaint, the branches and the watched ones, on a machine's sheet: roles become
 * parts, parts become their failure modes, `per: output` gates become one copy an output. A gate that
 * ends up without inputs (the machine has no such part) can never hold and is left out everywhere.
 */
export function drawTree(knowledge: Knowledge, complaint: Complaint, machine: Machine): DrawnTree {
  const drawing = new Drawing(knowledge, complaint, machine)
  for (const name of Object.keys(drawing.written)) drawing.copiesOf(name)
  return drawing
}

class Drawing implements DrawnTree {
  readonly gates = new Map<string, Gate>()
  readonly gateCards = new Map<string, GateCard>()
  readonly faultCards = new Map<string, FaultCard>()
  readonly copies = new Map<string, readonly GateCopy[]>()
  readonly written: Readonly<Record<string, ComplaintGate>>
  readonly #knowledge: Knowledge
  readonly #machine: Machine

  constructor(knowledge: Knowledge, complaint: Complaint, machine: Machine) {
    this.#knowledge = knowledge
    this.#machine = machine
    this.written = { ...complaint.gates, ...complaint.watched }
  }

  copiesOf(name: string): readonly GateCopy[] {
    const known = this.copies.get(name)
    if (known !== undefined) return known
    // Set before descending: a loop in the file then ends here, and the lint names it.
    this.copies.set(name, [])
    const gate = entry(this.written, name)
    const wanted: GateCopy[] =
      gate.per === 'output'
        ? this.#machine.outputs.map(({ id }) => ({ name: `${name}/${id}`, output: id }))
        : [{ name }]
    const drawn = wanted.filter((copy) => this.#drawCopy(gate, copy))
    this.copies.set(name, drawn)
    return drawn
  }

  #drawCopy(gate: ComplaintGate, copy: GateCopy): boolean {
    if (!hasAll(this.#machine, gate.needs ?? [])) return false
    const kind = gate.or ? 'or' : gate.and ? 'and' : 'atLeast'
    const inputs = inputsOf(gate).flatMap((input) => this.#inputsOf(input, copy.output))
    if (inputs.length === 0) return false
    const drawn = { kind, inputs } as const
    this.gates.set(copy.name, gate.atLeast ? { ...drawn, k: gate.atLeast.k } : drawn)
    const output = this.#machine.outputs.find(({ id }) => id === copy.output)?.name
    const fillings = fillingsOf(this.#machine, copy.output)
    const says = fill(gate.says, { ...fillings, ...(output && { output }) })
    this.gateCards.set(copy.name, { id: copy.name, says })
    return true
  }

  #inputsOf(input: GateInput, output: string | undefined): string[] {
    if ('gate' in input) return this.#copiesSeenFrom(input.gate, output)
    const target = targetOf(input)
    if (target in this.written) return this.#copiesSeenFrom(target, output)
    return partsOf(this.#machine, target, output).flatMap((part) =>
      this.#partGate(part, input, output),
    )
  }

  #copiesSeenFrom(name: string, output: string | undefined): string[] {
    return this.copiesOf(name)
      .filter((copy) => output === undefined || copy.output === undefined || copy.output === output)
      .map((copy) => copy.name)
  }

  /** The gate that gathers the failure modes of one part: those that the complaint means, and that reach this output. */
  #partGate(
    part: Part,
    input: Exclude<GateInput, { gate: string }>,
    output: string | undefined,
  ): string[] {
    const kind = named(this.#knowledge.partKinds, part.kind)
    const except = ('except' in input && input.except) || []
    const modes = kind.modes.filter(
      ({ id, sparesTwin }) =>
        (input.modes === undefined || input.modes.includes(id)) &&
        !except.includes(id) &&
        !(sparesTwin === 1 && isTwin(part, output)),
    )
    if (modes.length === 0) return []
    const all = modes.length === kind.modes.length
    const name = [`part:${part.id}`, ...(all ? [] : modes.map(({ id }) => id))].join(':')
    const inputs = modes.map((mode) => {
      const id = `${part.id}.${mode.id}`
      const { rate, source: rateSource } = rateFor(mode.rate, part.role)
      const comesAndGoesWith = mode.comesAndGoesWith ?? []
      // A watched gate over the same failure says nothing of it.
      const brings = this.#bringsOf(input, part, mode) ?? this.faultCards.get(id)?.brings
      this.faultCards.set(id, {
        id,
        part: part.id,
        says: mode.says,
        rate,
        pronoun: kind.plural ? 'they' : 'it',
        rateSource,
        ...(brings !== undefined && { brings }),
        comesAndGoesWith,
        ...(mode.mend && { mend: this.#mendOf(part, mode.mend) }),
      })
      return id
    })
    this.gates.set(name, { kind: 'or', inputs })
    this.gateCards.set(name, { id: name, says: part.name, part: part.id })
    return [name]
  }

  #bringsOf(
    input: Exclude<GateInput, { gate: string }>,
    part: Part,
    { sparesTwin = 0 }: Mode,
  ): number | undefined {
    const brings = 'brings' in input ? input.brings : undefined
    if (typeof brings !== 'object') return brings
    const all = this.#machine.outputs.length
    const served = outputsServed(part).length || all
    // Where it mostly spares the other tower of its coil it takes its own output alone.
    const taken = sparesTwin < 0.5 ? served : 1
    return 2 * taken < all ? brings.less : brings.half
  }

  #mendOf(
    part: Part,
    { phone, works, kit = [], undoes, opens, cautions }: NonNullable<Mode['mend']>,
  ): OwnersMend {
    const fillings = { ...fillingsOf(this.#machine, onlyOutput(part)), part: part.name }
    return {
      phone: sentencesIn(fill(phone, fillings)),
      ...(works !== undefined && { works }),
      kit,
      ...(undoes && { undoes }),
      ...(opens && { opens }),
      cautions: cautionCards(cautions, this.#knowledge, this.#machine),
    }
  }
}

/** The gate or the role that an input of a gate names. */
export function targetOf(input: GateInput): string {
  if ('gate' in input) return input.gate
  return 'any' in input ? input.any : input.each
}

/** What stands under a gate, by whichever of `or`, `and` and `atLeast` it is written. */
export function inputsOf({ or, and, atLeast }: ComplaintGate): readonly GateInput[] {
  return or ?? and ?? atLeast?.of ?? []
}

/** Base rate of a mode for a part of that role, per 1000 machines that come in. */
export function rateFor(rate: Rate, role: string): { rate: number; source: string } {
  return { rate: rate.roles?.[role] ?? rate.typical, source: rate.source }
}
