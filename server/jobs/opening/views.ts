import type { Choice, Way } from '../finding/views.ts'

export type { Choice } from '../finding/views.ts'

/** View models of the form that opens a job. */

/** The form that opens a job. Every field keeps what was typed or chosen. */
export interface NewJobPage {
  readonly title: string
  readonly action: string
  /** What the job will be about; left out where the machine or its complaint is not known. */
  readonly subject?: {
    readonly machine: string
    readonly complaint: string
    readonly another: Way
  }
  /** Where the job is open already and only what is otherwise by now is said. */
  readonly changes?: { readonly version: number; readonly back: Way }
  /** Names machine and complaint together. */
  readonly job: string
  /** A reading that it begins with: "Begins with: resistance of …: 480", and the fields it is sent in. */
  readonly begins?: {
    readonly says: string
    readonly fields: readonly { readonly name: string; readonly value: string }[]
  }
  /** What could not be taken, one sentence a field, in the order of the fields. */
  readonly problems: readonly { readonly field: string; readonly sentence: string }[]
  readonly where: ChoiceField
  readonly engine: ChoiceField
  readonly air: TextField & { readonly unit: string; readonly hint: string }
  readonly meter: ChoiceField
  readonly tools: ToolsField
  /** Who is at the machine; an owner on the phone is asked for their kit instead of place, meter and tools. */
  readonly who: ChoiceField
  readonly kit: ToolsField
  /** Asked of a machine that drives a boat. */
  readonly afloat?: ChoiceField
  readonly note: TextField
}

export interface ChoiceField {
  readonly choices: readonly Choice[]
  readonly problem?: string
}

/** Sets of tools, each with all tools to tick or leave out. */
export interface ToolsField {
  readonly sets: readonly (Choice & {
    /** Name of the field of its tools. */
    readonly field: string
    /** "14 tools" */
    readonly count: string
    readonly tools: readonly Choice[]
  })[]
  readonly problem?: string
}

export interface TextField {
  readonly value: string
  readonly problem?: string
}
