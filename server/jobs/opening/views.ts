/** View models of the pages around the jobs: where one starts, the list, the form that opens a job. */

/** The front page: machines with their complaints, and the jobs worked on last. */
export interface FrontPage {
  readonly title: string
  readonly machines: readonly {
    readonly id: string
    readonly name: string
    readonly about: string
    readonly complaints: readonly {
      readonly title: string
      readonly owner: string
      readonly href: string
    }[]
  }[]
  readonly latest: readonly JobRow[]
}

export interface JobsPage {
  readonly title: string
  readonly jobs: readonly JobRow[]
}

export interface JobRow {
  readonly number: string
  readonly href: string
  readonly machine: string
  readonly complaint: string
  readonly note: string
  /** "7 May 2031, 14:05", and the same for machines. */
  readonly changed: string
  readonly changedIso: string
  /** "3 readings taken" */
  readonly stands: string
}

/** The form that opens a job. Every field keeps what was typed or chosen. */
export interface NewJobPage {
  readonly title: string
  readonly action: string
  /** What could not be taken, one sentence a field, in the order of the fields. */
  readonly problems: readonly { readonly field: string; readonly sentence: string }[]
  readonly complaints: readonly {
    readonly machine: string
    /** Value and words of each choice; the value names machine and complaint together. */
    readonly choices: readonly Choice[]
  }[]
  readonly where: readonly Choice[]
  /** To the same form with the tools that one usually has at the other place. */
  readonly elsewhere: { readonly href: string; readonly text: string }
  readonly engine: readonly Choice[]
  readonly air: TextField
  readonly note: TextField
  readonly tools: readonly Choice[]
  readonly meters: readonly Choice[]
}

export interface Choice {
  readonly value: string
  readonly says: string
  /** A second line under the words, or empty. */
  readonly more: string
  readonly chosen: boolean
}

export interface TextField {
  readonly value: string
  readonly problem?: string
}
