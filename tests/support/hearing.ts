import type { Case } from '../../server/knowledge/case.ts'
import { fill, fillingsOf } from '../../server/knowledge/instantiate/words.ts'

/** A sentence of a page for an owner, and what it is. */
export interface Said {
  readonly label: string
  readonly says: string
}

/** What can be seen of a machine whose owner does only what is said. */
export interface Seen {
  /** Any spark plug is out of its hole. */
  plugsOut: boolean
  /** Any cap is off its own plug. */
  capsOff: boolean
  /** A rag lies over open plug holes. */
  covered: boolean
  tankOpen: boolean
  /** The choke stands half closed, where a way home had it. */
  onHalfChoke: boolean
  /** It cannot move off. */
  isHeld: boolean
  /** It may run: it was started and nobody has said to stop it. */
  mayRun: boolean
}

/** As a machine comes in, held by nobody. */
const whole: Seen = {
  plugsOut: false,
  capsOff: false,
  covered: false,
  tankOpen: false,
  onHalfChoke: false,
  isHeld: false,
  mayRun: false,
}

/** What sentences do to it: each of these by what it says. */
const effects: readonly (readonly [says: RegExp, does: Partial<Seen>])[] = [
  [/\brags?\b[^.]*\baway\b|take every rag|take (the|every) rag /, { covered: false }],
  [
    /\bunscrew (that|every)|screw (every spark plug|that plug|its old plug|the plug|the .*spark plug.*) out|take every spark plug out of its hole/,
    { plugsOut: true },
  ],
  [
    /pull (the|each|every|that) (plug )?caps?\b.* off|pull the caps? off|pull the cap to be tried|out of its hole and its cap/,
    { capsOff: true },
  ],
  [/lay a .*rag\b.* over the hole/, { covered: true }],
  [/take the tank cap off\b(?!.*close)|open the tank\b(?!.*close)/, { tankOpen: true }],
  [/close (the tank|it again)|put the tank cap/, { tankOpen: false }],
  [/\bclose (the|its) choke (halfway|by half)\b/, { onHalfChoke: true }],
  [/\bopen the choke\b/, { onHalfChoke: false }],
  [
    /\bscrew (in (any|every)|((it|each plug|every (spark )?plug|the new one|the plug|a new plug|both)\b.*\b(in|into|back)\b))|put (the old plug|each plug) back(?! into its cap)/,
    { plugsOut: false },
  ],
  [
    /push (each|every|its|the|both|that) (own )?(plug )?caps?\b.*\b(on|home)\b|push it (back )?on (its plug|again)|put each cap back|every cap on its own plug|both caps on|caps sits? on/,
    { capsOff: false },
  ],
]

/** What held it is undone, or it goes into gear. */
const letsGo = /undo what held|let go of the parking brake|anchor up|lines off|into gear/

/** Whoever does to the letter what is said by phone, and sees where it makes no sense. */
export class Owner {
  readonly seen: Seen = { ...whole }
  /** What made no sense so far, a sentence each. */
  readonly amiss: string[] = []
  #isBrokenOff = false
  readonly #held: string
  readonly #starts: RegExp

  constructor({ machine }: Case) {
    const fillings = fillingsOf(machine)
    this.#held = fill('{held}', fillings).toLowerCase()
    this.#starts = new RegExp(
      `\\b(${fill('{turn}', fillings).toLowerCase()}|start (it|the engine))\\b`,
    )
  }

  /**
   * @param where for what is amiss
   * @param runs it is to run once it is started
   */
  hear({ label, says }: Said, where: string, runs = false): void {
    const said = says.toLowerCase().replace(/^unless it is so already: /, '')
    if (said.includes(this.#held)) this.seen.isHeld = true
    if (letsGo.test(said)) this.seen.isHeld = false
    if (/\bstop it\b|\bit (must|has to) (die|stop)\b/.test(said)) {
      this.seen.mayRun = false
      this.#isBrokenOff = false
    }
    if (this.#isBrokenOff && !['again', 'first'].includes(label)) {
      this.#note(where, says, 'while it may run')
      this.#isBrokenOff = false
    }
    const before = { ...this.seen }
    for (const [pattern, does] of effects) if (pattern.test(said)) Object.assign(this.seen, does)
    // What was begun is ended only where it was, and that may be before the rag went on.
    const isEnding = label === 'put back first' || label === 'again'
    if (before.plugsOut && !this.seen.plugsOut && this.seen.covered && !isEnding)
      this.#note(where, says, 'with a rag over the holes')
    if (this.#isOrder(said) && ['put back first', 'again', 'hand over'].includes(label)) {
      this.#note(where, says, 'before all is back')
    }
    if (
      label === 'try the stop' &&
      this.#isOrder(said) &&
      (this.seen.plugsOut || this.seen.capsOff)
    ) {
      this.#note(where, says, 'and a plug or a cap is off')
    }
    if (this.#isStart(label, said)) {
      if (!this.seen.isHeld) this.#note(where, says, 'and nothing holds it')
      if (this.seen.tankOpen) this.#note(where, says, 'and the tank is open')
      if (before.onHalfChoke) this.#note(where, says, 'and the choke is half closed')
      if (runs) this.seen.mayRun = true
    }
  }

  /** They were broken off in the middle of it: where it may run, nothing is said before it is stopped. */
  brokenOff(): void {
    this.#isBrokenOff = this.seen.mayRun
  }

  /** What a page takes to be so, for what it says next. */
  expect(what: Partial<Seen>, where: string): void {
    for (const key of Object.keys(what) as (keyof Seen)[]) {
      if (this.seen[key] !== what[key]) this.amiss.push(`${where}: ${key} is ${this.seen[key]}`)
    }
  }

  /** It is started or turned over now, and not some other time. */
  #isStart(label: string, said: string): boolean {
    const isTold = ['do', 'try it', 'make ready'].includes(label)
    return isTold && this.#isOrder(said)
  }

  /** Somebody is to start it, and not only to know what comes of it. */
  #isOrder(said: string): boolean {
    return (
      this.#starts.test(said) &&
      !/^(if|nobody|before|keep that|never|(please )?do not|tell|show me)\b|see that it does not start/.test(
        said,
      )
    )
  }

  #note(where: string, says: string, what: string): void {
    this.amiss.push(`${where}: “${says}” ${what}`)
  }
}
