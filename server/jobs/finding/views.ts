/** View models of the pages where one finds things: a machine, a part, a job. */

/** The front page: work in progress, and the machines that fit what was typed. */
export interface FrontPage {
  readonly title: string
  /** The open jobs changed last. */
  readonly inProgress: readonly JobRow[]
  /** What was typed to find a machine. */
  readonly find: string
  /** "The first 8 of 300 machines. Type more of the name." */
  readonly says: string
  readonly machines: readonly MachineView[]
  /** Parts that are called so: to their limits. */
  readonly parts: readonly Way[]
  /** Back to all of them, where not all fit. */
  readonly all?: Way
}

export interface MachineView {
  readonly id: string
  readonly name: string
  readonly family: string
  readonly about: string
  /** Where its limits are at hand, without a complaint. */
  readonly limitsHref: string
  /** Its complaints are shown without a press. */
  readonly open: boolean
  /** No complaint fits it: there is nothing to press but its limits. */
  readonly fitsNothing: boolean
  readonly groups: readonly {
    readonly name: string
    readonly complaints: readonly {
      readonly title: string
      readonly owner: string
      readonly href: string
    }[]
  }[]
}

/** One page of the list of jobs. */
export interface JobsPage {
  readonly title: string
  readonly find: string
  /** Why it cannot be searched for. */
  readonly problem?: string
  /** Where to look for the words. */
  readonly fields: readonly Choice[]
  readonly states: readonly Choice[]
  /** "312 jobs found" */
  readonly says: string
  /** There is no job at all. */
  readonly isEmpty: boolean
  readonly jobs: readonly JobRow[]
  /** Back to all of them, where not all are meant. */
  readonly all?: Way
  /** "Page 2 of 13" */
  readonly pages?: string
  readonly previous?: Way
  readonly next?: Way
}

export interface JobRow {
  readonly number: string
  readonly href: string
  readonly machine: string
  /** The machine without its maker. */
  readonly model: string
  readonly complaint: string
  readonly note: string
  /** "7 May 2031, 14:05", and the same for machines. */
  readonly changed: string
  readonly changedIso: string
  readonly state: 'Open' | 'Repaired' | 'Proved' | 'Done'
  /** "Named: start exciter." */
  readonly verdict: string
}

export interface Way {
  readonly href: string
  readonly text: string
}

export interface Choice {
  readonly value: string
  readonly says: string
  /** A second line under the words, or empty. */
  readonly more: string
  readonly chosen: boolean
}
