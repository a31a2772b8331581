import type { CautionsView } from '../words/cautions/cautions.ts'
import type { NextStep } from '../words/next-step.ts'

export interface VerdictView {
  readonly kind: 'named' | 'cannotSeparate' | 'contradiction' | 'outsideThisTree'
  /** What kind of verdict it is, in words: "Named", "Cannot be told apart". */
  readonly stamp: string
  /** One sentence. */
  readonly says: string
  /** Sentences of evidence, most telling first. */
  readonly evidence: readonly string[]
  readonly cautions: CautionsView
  /** What to do next: repair, which check to repeat; each with a way to it where there is one. */
  readonly next: readonly NextStep[]
  /** How the repair is proved, once all is put back; sentences. */
  readonly prove: readonly string[]
  /** What it could still be, as sentences. */
  readonly couldBe: readonly string[]
}

/** What may be written down beside a repair: all of it may stay empty. */
export interface WrittenView {
  /** What it was, where it is no part of the tree; left out where parts say it. */
  readonly cause?: string
  /** Unfolded, as something in it came back. */
  readonly open: boolean
  /** Ways of failing to choose from, where it is one part. */
  readonly faults: readonly {
    readonly id: string
    readonly says: string
    readonly chosen: boolean
  }[]
  readonly note: string
  readonly price: string
  readonly minutes: string
  /** The field that could not be taken, and what to do. */
  readonly problem?: { readonly field: string; readonly says: string }
}

/** Writing down the repair, proving it, or that all is done. */
export interface RepairView {
  readonly title: string
  readonly says: string
  /** What stands before the steps. */
  readonly cautions: CautionsView
  readonly steps: readonly string[]
  readonly action: string
  /** Parts the repair is of, or `notListed`, as the form sends them back; empty where the button says it, or nothing is sent. */
  readonly parts: string
  /** What may be written down beside it. */
  readonly written?: WrittenView
  /** Where it is sent that it was written down by mistake, and what that takes back. */
  readonly withdraw?: { readonly action: string; readonly says: string }
  /** Where something else than these parts is written down. */
  readonly orElse?: { readonly href: string; readonly text: string }
  /** What may be written down of its proof. */
  readonly proof?: { readonly read: string; readonly problem?: string }
  readonly buttons: readonly {
    readonly name: 'choice' | 'parts'
    readonly value: string
    readonly says: string
  }[]
}
