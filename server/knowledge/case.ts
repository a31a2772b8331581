import type { Model } from '../diagnosis/model/model.ts'
import type { Material } from '../measure/correct/temperature.ts'
import type { Quantity } from '../measure/reading/quantity.ts'
import type { Limits } from '../measure/reading/reading.ts'
import type { CheckKind } from './schema/check-kind.ts'
import type { Complaint, Machine } from './schema/index.ts'
import type { Connector } from './schema/machine.ts'
import type { Proof } from './schema/proof.ts'
import type { Place } from './schema/shared.ts'
import type { Signal } from './schema/tables.ts'

/**
 * One complaint on one machine: the model to weigh, and beside it the words and places for people.
 * Made by `instantiate`; never changed afterwards, so one copy serves every job of that kind.
 */
export interface Case {
  readonly machine: Machine
  readonly complaint: Complaint
  readonly model: Model
  /** Share of the tree's weight in combinations too rare to be weighed, 0 to 1; it counts as something else. */
  readonly leftOut: number
  /** Every gate of `model.tree`, by name. */
  readonly gates: ReadonlyMap<string, GateCard>
  /** Every fault of `model.tree`, by name (`part.mode`). */
  readonly faults: ReadonlyMap<string, FaultCard>
  readonly parts: ReadonlyMap<string, PartCard>
  /** One for each of `model.checks`, by name. */
  readonly checks: ReadonlyMap<string, CheckCard>
  /** For each way home that the complaint names: the faults that it gets around. */
  readonly ways: ReadonlyMap<string, readonly string[]>
  /** For each that is not tried where something is likelier than not: the faults that this may be. */
  readonly noWays: ReadonlyMap<string, readonly string[]>
}

export interface GateCard {
  readonly id: string
  /** "No supply reaches the igniter". For a part's own gate: the part's name. */
  readonly says: string
  /** The part, where the gate only gathers the failure modes of one. */
  readonly part?: string
}

export interface FaultCard {
  readonly id: string
  readonly part: string
  /** "is open somewhere in the winding": completes a sentence that begins with the part's name. */
  readonly says: string
  /** What stands for the part's name in such a sentence: points are many. */
  readonly pronoun: 'it' | 'they'
  /** Base rate per 1000 machines that come in, and where it comes from. */
  readonly rate: number
  readonly rateSource: string
  /** How often it brings this complaint and no other, above 0; left out: 1. */
  readonly brings?: number
  readonly comesAndGoesWith: readonly string[]
  /** How an owner far from a workshop puts it right, and with what of their kit. Left out: it belongs at the bench. */
  readonly mend?: OwnersMend
}

export interface OwnersMend {
  /** One sentence at a time. */
  readonly phone: readonly string[]
  /** Chance that the trouble goes where this is its cause, above 0; left out: 1. */
  readonly works?: number
  readonly kit: readonly string[]
  /** Names of the set-ups that it puts back. */
  readonly undoes?: readonly string[]
  /** Names of what it opens: left half done, that may be open still. */
  readonly opens?: readonly string[]
  readonly cautions: readonly CautionCard[]
}

export interface PartCard {
  readonly id: string
  readonly name: string
  readonly where?: string
  readonly repair: string
  readonly prove: Proof
  readonly cautions: readonly CautionCard[]
}

export interface CheckCard {
  readonly id: string
  readonly title: string
  /** The part it reads, where it reads one. */
  readonly part?: string
  readonly engine: 'stopped' | 'cranking' | 'running'
  readonly where: readonly Place[]
  readonly tools: readonly ToolCard[]
  readonly meter?: string
  /** Minutes of the check itself; set-ups come on top. */
  readonly minutes: number
  /** Diodes read both ways, a field for each reading: what it touches, how, and which answer follows. */
  readonly oneWay?: NonNullable<CheckKind['oneWay']>
  /** Minutes of these that it waits at its end, once it has turned the engine and been read. Left out: none. */
  readonly waits?: number
  /** In the order in which they are made: covers, connectors, what is fitted. */
  readonly setups: readonly SetupCard[]
  /** What has to be put back before it is made, each with its way back. */
  readonly forbids: readonly SetupCard[]
  /** It cools or starts what was run hot for it, so nothing that fades is left. */
  readonly cools?: true
  /** Somebody is only asked, so the machine stays as it stands. */
  readonly asked?: true
  /** What is read lies on the bench by itself. */
  readonly loose?: true
  readonly spot?: Spot
  /** The last of them put back what may not stay apart. */
  readonly do: readonly string[]
  /** The same in words to read to an owner, one sentence at a time. */
  readonly phone: readonly string[]
  /** The sentence of it that the answers are to: its last question, or what is to be read out. */
  readonly asks: string
  readonly why: string
  /** The same at length, as an old hand says it. */
  readonly teach?: string
  /** Whether an owner on the phone can make it. */
  readonly owner: OwnerFit
  readonly cautions: readonly CautionCard[]
  /** A measured check has a quantity and limits, any other has answers. */
  readonly measurand?: Measurand
  readonly answers?: readonly {
    readonly id: string
    readonly says: string
    readonly phone: string
    /** How what was seen is put right there and then, and the parts whose fault it may have been. */
    readonly mend?: {
      readonly says: string
      /** The same in words to read to an owner. */
      readonly phone: string
      /** What it takes of the kit of an owner. Left out: hands. */
      readonly kit?: readonly string[]
      /** Names of the set-ups that it puts back. */
      readonly undoes?: readonly string[]
      /** Names of what it opens: left half done, that may be open still. */
      readonly opens?: readonly string[]
      /** The same of what it sets otherwise: in vain, that goes back. */
      readonly stays?: readonly string[]
      readonly parts: readonly string[]
      /** It was no part of the tree. */
      readonly elsewhere?: true
      /** Besides those of the check. */
      readonly cautions?: readonly CautionCard[]
    }
    /** What this answer makes unsafe until a check of some kind has been made. */
    readonly bars?: Barring
    /** Said before anything is touched. */
    readonly untouched?: true
    /** Cautions that are said whole once more before the engine turns next. */
    readonly renews?: readonly CautionCard[]
    /** Names of ways home that were tried with it in vain. */
    readonly inVain?: readonly string[]
  }[]
  /** Outcome names, as in the model: bands or answer ids. */
  readonly outcomes: readonly string[]
  /** Answers that this machine cannot give and a job may still hold, each with the one that it counts as. */
  readonly countedAs?: Readonly<Record<string, string>>
}

/** After this answer nothing is done with the engine so, nor these checks made. */
export interface Barring {
  readonly engine?: readonly CheckCard['engine'][] | undefined
  /** Kinds of check. */
  readonly checks?: readonly string[] | undefined
  /** Until a check of this kind was made: its cards are called so, alone or before a dot. Left out: as long as it is answered so. */
  readonly until?: string | undefined
  /** Why, a sentence. */
  readonly says: string
}

/** What a measured check compares its reading with. */
export interface Measurand {
  readonly property: string
  readonly quantity: Quantity
  readonly limits: Limits
  readonly limitsSource: string
  /** Temperature the limits hold at, °C; left out where the sheet names none. */
  readonly at?: number
  /** Speed the limits hold at, revolutions a minute. */
  readonly rpm?: number
  readonly material: Material
  /** It is read at so many places, and the reading that is furthest out counts. */
  readonly places?: number
  /** It is moved while it is read: of several values of one take the highest counts. */
  readonly moved?: true
  /** The steps of the check warm the part to this, °C. */
  readonly warmedTo?: number
}

/** Where the probes or eyes go. */
export interface Spot {
  /** "the igniter plug, pins 3 and 4", "the coil tower and pin 1 of the coil plug" */
  readonly says: string
  readonly connector?: { readonly id: string; readonly card: Connector }
  /** What each probe touches: a pin number as text, `ground`, or words. */
  readonly touch: readonly [string, string]
  readonly awkward: boolean
}

/** What to do, in minutes. */
export interface DoingCard {
  readonly do: string
  /** The same in words to read to an owner. Left out: those. */
  readonly phone?: string
  readonly minutes: number
}

/** One thing that a check needs apart, off, fitted or ready. */
export interface SetupCard extends DoingCard {
  readonly id: string
  /** How it is put back; left out where it leaves nothing behind. */
  readonly undo?: DoingCard
  /** While it holds, the stop switch does nothing. */
  readonly stopOff?: true
  /** It does not outlast the check: the check's own last steps put it back. */
  readonly once?: true
  /** It goes by itself after so many minutes of work; until then another check that needs it has this said. */
  readonly lasts?: DoingCard
}

/** Yes, with what of their kit it needs besides its tools; or no, and why not, a sentence. */
export type OwnerFit =
  | { readonly fit: true; readonly needs: readonly string[] }
  | { readonly fit: false; readonly why: string }

export interface ToolCard {
  readonly id: string
  readonly name: string
  /** It is only used in air that is warmer, °C. */
  readonly above?: number
}

export interface CautionCard {
  readonly id: string
  readonly signal: Signal
  /** What to do or leave, in one line. */
  readonly command: string
  readonly says: string
  readonly phone: string
  /** Half a sentence for an owner who has heard it before: "hands off the leads". */
  readonly reminds: string
  /** It is about an engine that does this, whatever is made ready before that. */
  readonly engine?: 'cranking' | 'running'
  /** Set-ups that bring it about, by name. */
  readonly setups?: readonly string[]
}
