import type { SentFact } from '../../web/kept.ts'
import type { ReadingForm, SpotView } from '../check/view.ts'
import type { Ticket } from '../standing/ticket.ts'
import type { CautionsView } from '../words/cautions/cautions.ts'

/** View models of a job by phone: one sentence to say at a time, and the answers an owner gives. */

/** One sentence to read out. */
export interface Line {
  readonly says: string
  /** What kind of sentence it is, in a word: a signal word, "Put back", "Make ready", "Do", "Ask". */
  readonly label: string
  /** The signal word, where it is a caution. */
  readonly signal?: string
  /** The question that opens a check was asked, and one answer to it ends the check. */
  readonly opens?: true
}

/** All there is to say about one thing, and the sentence that stands large now. */
export interface SayingView {
  readonly lines: readonly Line[]
  /** Index of the one to say now. */
  readonly at: number
  /** "3 of 7" */
  readonly place: string
  readonly back?: string
  /** Left out at the last one, where the answers stand. */
  readonly next?: string
}

export interface PhonePage {
  readonly title: string
  readonly job: Ticket
  /** Which check this is, machine, complaint. */
  readonly head: readonly string[]
  readonly said: string
  readonly notice?: string
  /** What was sent with it and has no field on this page. */
  readonly sent?: readonly SentFact[]
  /** The line went dead, or a way home was left half done: what to say before anything else. */
  readonly again?: { readonly title: string; readonly says: readonly string[] }
  /** What came back last and what it meant, for whoever holds the phone at this end. */
  readonly last?: {
    readonly says: string
    readonly means: string
    /** Where it is put right, if they take it back. */
    readonly correctHref: string
    /** Where it is read once more, where one reading is not enough to go by. */
    readonly againHref?: string
  }
  /** The check that was passed over last of all, why, and where it is made after all. */
  readonly skippedLast?: { readonly says: string; readonly href: string }
  /** What they said last of something that they were told to put right, and where it is sent that it was a mistake. */
  readonly triedLast?: {
    readonly says: string
    readonly action: string
    readonly fields: readonly { readonly name: string; readonly value: string }[]
  }
  /** One of these three. */
  readonly check?: PhoneCheck
  readonly deed?: PhoneDeed
  readonly ending?: PhoneEnding
  /** Where it is sent that the last repair was none, and what the button says. */
  readonly withdraw?: { readonly action: string; readonly says: string }
  readonly ways: readonly { readonly href: string; readonly text: string }[]
  /** Those of every page that instructs. */
  readonly notices: CautionsView
}

export interface PhoneCheck {
  readonly id: string
  readonly title: string
  readonly saying: SayingView
  /** The question is asked, and there is more to say before its answer is set down. */
  readonly keepsAnswer: boolean
  /** The question that opens it is asked, and these answers end it there. */
  readonly atOnce: readonly { readonly id: string; readonly says: string }[]
  /** What "the pin that I name" is: the pins and wires, where there are any. */
  readonly spot?: SpotView
  /** What a good one shows, where it is measured: for this end of the line only. */
  readonly good?: string
  readonly why: string
  readonly form: PhoneForm
}

export interface PhoneForm
  extends Pick<ReadingForm, 'action' | 'field' | 'typed' | 'problem' | 'kept'> {
  /** The questions that the answers are to. */
  readonly asks: string
  /** It stands large just above, so nobody reads it twice. */
  readonly heard: boolean
  readonly answers: readonly { readonly id: string; readonly says: string }[]
  /** What is put right, and the way to leave it as it was. */
  readonly corrects?: ReadingForm['corrects']
  /** How it is passed over, and why; made once more, it is left at what was read before. */
  readonly skip: {
    readonly action: string
    readonly reasons: readonly string[]
    /** Whether they have heard some of what is done for it. */
    readonly begun: 'yes' | 'no'
  }
  readonly cutOff: string
}

/** Something to do that tells nothing about the fault: to put it right, or to see that it stays away. */
export interface PhoneDeed {
  readonly title: string
  readonly saying: SayingView
  /** What may come of it, at its last sentence. */
  readonly answers: readonly DeedAnswer[]
  /** The way out of it before its last sentence, where there is one. */
  readonly leave?: DeedAnswer
  /** Where it is sent that the line was cut, or that they ring again, and what the button says. */
  readonly cutOff?: { readonly action: string; readonly says: string }
}

export interface DeedAnswer {
  readonly action: string
  readonly fields: readonly { readonly name: string; readonly value: string }[]
  readonly says: string
}

/** What to say once there is nothing more to ask. */
export interface PhoneEnding extends PhoneDeed {
  readonly stamp: string
  readonly onwards: readonly { readonly href: string; readonly text: string }[]
}

/** How to get home with it. */
export interface HomePage {
  readonly title: string
  readonly job: Ticket
  readonly head: readonly string[]
  readonly said: string
  /** That it is stopped first, where they may stand beside it while it runs. */
  readonly stop: readonly string[]
  /** Ways to try, the one first that gets around what is likeliest. */
  readonly ways: readonly HomeWay[]
  /** Ways that want something the owner has not: "… needs tape". */
  readonly lacking: readonly string[]
  readonly never: readonly string[]
  /** How to put back what is apart, where it is not tried but towed, pushed or left. */
  readonly apart: readonly string[]
  readonly stay: readonly string[]
  /** The way that is being tried, one sentence at a time. */
  readonly trying?: {
    readonly id: string
    readonly says: string
    readonly saying: SayingView
    readonly danger: string
    /** More than its first sentence was said: who knows what is apart by now. */
    readonly isBegun: boolean
    /** The check that they may have begun before it, or empty. */
    readonly begun: string
    readonly action: string
    /** Where it is sent that the line was cut. */
    readonly cutOff: string
  }
  /** Another way, or back to the checks; none once a way was begun, which is answered. */
  readonly back?: { readonly href: string; readonly text: string }
  readonly notices: CautionsView
}

export interface HomeWay {
  readonly href: string
  readonly says: string
  readonly danger: string
  /** "Tried: it did not help." */
  readonly tried?: string
}
