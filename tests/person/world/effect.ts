import type { Random } from '../../../server/practice/world/chance.ts'

/**
 * What a failure does to a part, in physical terms. What is left out is as in a good part.
 */
export interface Effect {
  /** Ω in the way; Infinity where it is broken. */
  readonly series?: number
  /** Ω of a path to metal. */
  readonly leak?: number
  /** Where along a winding that path leaves it, 0 to 1. */
  readonly at?: number
  /** Ω between the two wires that it should keep apart. */
  readonly across?: number
  /** Share of the turns that is left. */
  readonly turns?: number
  /** The same two of the primary, where a part has two windings. */
  readonly primaryTurns?: number
  readonly primarySeries?: number
  /** Ω in the heavy contacts of a relay, or in those of a key for START. */
  readonly contacts?: number
  /** Which leg of a three-phase winding. */
  readonly leg?: number
  /** What it gives, as a share of what a good one gives: EMF, pulse, spark, light. */
  readonly gives?: number
  /** As a share of a good spark: what exceeds this goes astray to metal. */
  readonly holdsOff?: number
  /** How many times the voltage of a good plug it asks for. */
  readonly asks?: number
  /** V above which its insulation breaks down. */
  readonly breaksDownAt?: number
  /** Left out where it is always there. */
  readonly comes?: Comes
  /** What eyes and fingers find, where there is something to find. */
  readonly looks?: string
}

/** A failure that comes and goes. */
export interface Comes {
  readonly with: 'shaking' | 'water' | 'heat'
  /** Chance that it is there without being provoked, at each disturbance. */
  readonly idle: number
  /** Chance that it shows when it is provoked. */
  readonly provoked: number
  /** °C above which heat brings it. */
  readonly above?: number
}

/** What the draw of an effect may look at: values of the good part, and what the owner complains of. */
export interface Draw {
  readonly random: Random
  readonly complaint: string
  readonly role: string
  /** Ω of the good winding; 1 where it has none. */
  readonly ohms: number
  /** V peak of the good winding at an ordinary pull; 0 where it has none. */
  readonly volts: number
}

/** Failure modes of one part kind, by name. */
export type Effects = Readonly<Record<string, (draw: Draw) => Effect>>

/**
 * Chance that a failure can be seen where one looks: plainly, about as often as not, or seldom. Drawn once, so that
 * a second look finds what the first one found. From memory.
 */
export const visible = { plain: 0.88, half: 0.6, hidden: 0.35 } as const
