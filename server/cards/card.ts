import type { CautionCard, SetupCard } from '../knowledge/case.ts'

/** View models of the pocket cards. */

/** One complaint with one set of tools, whole. */
export interface CardView {
  /** Name of the complaint, and of what the card's places are called by. */
  readonly id: string
  readonly machine: string
  readonly complaint: string
  /** "I pull and pull, and it does not fire." */
  readonly owner: string
  readonly tools: string
  readonly cautions: readonly CautionPanel[]
  /** What the card can name, and what it leaves out; sentences. */
  readonly reach: readonly string[]
  readonly first: StageView
  /** The same for paper, each step and each ending once, and the checks that only make sure. */
  readonly paper: PaperView
  /** Those that stand once below the steps; of a light card each stands where it is named. */
  readonly repairs: readonly RepairView[]
  readonly back: readonly string[]
  readonly home: HomeView
  /** What the limits hold at, and how to read them; sentences. */
  readonly notes: readonly string[]
}

/** Cautions of one signal word. */
export interface CautionPanel {
  readonly signal: CautionCard['signal']
  readonly cautions: readonly (Heed & {
    /** Steps on paper call it by this: "1". */
    readonly number: string
    readonly says: string
  })[]
}

/** A caution in its one line. */
export type Heed = Pick<CautionCard, 'id' | 'command'>

export type StageView = StepView | EndingView

/** A check on the way. */
export interface StepView {
  readonly kind: 'step'
  readonly number: string
  /** The first step that makes the same check. */
  readonly as: string
  readonly check: CheckWords
  readonly answers: readonly AnswerView[]
  /** No answer leads off the card. */
  readonly isWhole: boolean
}

export interface AnswerView {
  readonly says: string
  /** How what was seen is put right there and then. */
  readonly mend: string
  /** "5", "C" */
  readonly to: string
  readonly next: StageView
}

/** What to do, and what a good one shows. */
export interface CheckWords {
  readonly title: string
  readonly asks: string
  readonly heed: readonly Heed[]
  /** Put back and made ready first; sentences. */
  readonly ready: readonly string[]
  /** What has to be so while it is made, and what may not be, however the machine stood before. */
  readonly needs: readonly SetupCard[]
  readonly forbids: readonly SetupCard[]
  /** "Igniter plug, pins 3 and 4. Under the seat." */
  readonly where: string
  /** "A: pin 3, yellow with red tracer (YE/RD)" */
  readonly touch: readonly string[]
  /** "reads 310 Ω to 420 Ω" */
  readonly good: string
  readonly setting: string
  readonly tools: string
  readonly toolNames: readonly string[]
  readonly steps: readonly string[]
  /** The same in short. */
  readonly short: readonly string[]
}

/** Where the card ends. */
export interface EndingView {
  readonly kind: 'ending'
  readonly letter: string
  /** "The pickup, 92 %" */
  readonly title: string
  /** "It has an open winding." and what else; sentences. */
  readonly says: readonly string[]
  readonly sure: readonly SureView[]
  readonly heed: readonly Heed[]
  readonly back: readonly string[]
  /** The part to repair, by its name. */
  readonly repaired: string
  /** Where it is. */
  readonly where: string
  readonly repair: string
  readonly proof: string
}

/** The repair of a part, once for all endings that name it. */
export type RepairView = Pick<EndingView, 'heed' | 'where' | 'repair'> & { readonly name: string }

/** A check that makes an ending sure, and what it must show. */
export interface SureView {
  readonly number: string
  readonly check: CheckWords
  readonly must: string
  /** The number of the step on the same way that made it before. */
  readonly above?: string
}

export interface PaperView {
  /** How small it is set: chosen by how much there is. */
  readonly size: 'wide' | 'close' | 'closest'
  /** Cautions are in one line each. */
  readonly isTight: boolean
  /** Tools for all of it. */
  readonly tools: string
  /** What is taken apart or fitted on the way, called by a letter in the steps. */
  readonly setups: readonly {
    readonly letter: string
    readonly make: string
    readonly undo: string
  }[]
  readonly steps: readonly PaperStep[]
  readonly endings: readonly PaperEnding[]
}

export interface PaperEnding
  extends Omit<EndingView, 'kind' | 'repaired' | 'sure' | 'back' | 'heed'> {
  readonly heed: string
  readonly sure: readonly Pick<SureView, 'number' | 'must'>[]
}

export interface PaperStep {
  readonly number: string
  readonly title: string
  /** Commands, or on a full card the numbers of the cautions: "! 1 3". */
  readonly heed: string
  /** All but its answers, in one paragraph; of a check that stood before: "As 4." */
  readonly says: string
  /** "No spark → 5" */
  readonly answers: readonly { readonly says: string; readonly to: string }[]
}

export interface HomeView {
  readonly ways: readonly {
    readonly says: string
    readonly needs: string
    readonly heed: readonly Heed[]
    /** "! 1 3": the same by their numbers among the card's cautions; empty where one does not stand there. */
    readonly heedNumbers: string
    readonly steps: readonly string[]
    readonly danger: string
  }[]
  readonly never: readonly string[]
  readonly stay: readonly string[]
}

/** One card, or all of a machine: a page that stands alone. */
export interface CardsPage {
  readonly title: string
  readonly style: string
  readonly cards: readonly CardView[]
  /** The date of the knowledge, as a hash of it. */
  readonly hash: string
  readonly book: boolean
}
