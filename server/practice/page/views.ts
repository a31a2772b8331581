import type { SuspectsView } from '../../jobs/beside/view.ts'
import type { SpotView, StepsView } from '../../jobs/check/view.ts'
import type { CautionsView } from '../../jobs/words/cautions/cautions.ts'
import type { Fact } from '../../jobs/words/fact.ts'
import type { LimitsView } from './limits.ts'

/** The page of a round. */
export interface RoundPage {
  readonly title: string
  /** The page has cautions of its own at its foot. */
  readonly notices: CautionsView
  readonly id: number
  readonly version: number
  readonly href: string
  readonly heading: string
  readonly owner: string
  readonly facts: readonly Fact[]
  /** Something about the whole page that could not be taken. */
  readonly notice?: string
  readonly last?: LastView
  readonly bought?: string
  readonly check?: PracticeCheckView
  readonly groups: readonly CheckGroup[]
  readonly stands: readonly {
    readonly setup: string
    readonly says: string
    readonly minutes: string
  }[]
  readonly readings: readonly string[]
  /** That all is put back before a part is tried, where something is apart. */
  readonly putTogether?: string
  readonly suspects?: SuspectsView
  readonly parts: readonly {
    readonly id: string
    readonly name: string
    readonly chosen: boolean
  }[]
  /** A way to the same machine for others. */
  readonly handOut: { readonly href: string; readonly says: string }
}

export interface LastView {
  readonly title: string
  readonly shown: string
  /** Why nothing came back, what that cost, and what to put back. */
  readonly hindered?: string
  /** What was left in its way, and that it tells nothing so. */
  readonly spoilt?: string
}

export interface PracticeCheckView {
  readonly id: string
  readonly title: string
  readonly cautions: CautionsView
  /** Why it is not safe after what was answered; then it cannot be made. */
  readonly barred?: string
  readonly limits?: LimitsView
  readonly setting?: string
  /** What the meter cannot tell here; left out where it is fit. */
  readonly unfit?: string
  readonly spot?: SpotView
  readonly steps: readonly StepsView[]
  /** Who enters what a step speaks of entering. */
  readonly entering?: string
  readonly terms: readonly Fact[]
  /** What stands in its way and stays unless it is put back. */
  readonly putBack: readonly { readonly setup: string; readonly says: string }[]
  readonly pulls: readonly {
    readonly value: string
    readonly says: string
    readonly chosen: boolean
  }[]
  readonly submit: string
}

export interface CheckGroup {
  readonly name: string
  readonly checks: readonly {
    readonly href: string
    readonly title: string
    readonly says: string
    /** That the meter at hand cannot judge it, and why. */
    readonly cannot?: string
  }[]
}
