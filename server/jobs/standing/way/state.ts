import type { SetupCard } from '../../../knowledge/case.ts'
import type { Fading } from './fading.ts'

/** The machine as the checks made so far left it, in the order in which it came to be so. */
export interface AsItStands {
  /** What is apart, off, fitted or ready. */
  readonly setups: readonly SetupCard[]
  /** What may be so: a check was skipped, and nobody knows how far whoever skipped it had gone. */
  readonly unsure: readonly SetupCard[]
  /** What will go by itself, as heat does. */
  readonly fading: readonly Fading[]
  /** Checks that may be half done: what their own steps took out, and no set-up knows of, may be out. By name. */
  readonly half?: readonly string[]
  /** What was opened to put something right or to get home, and may be open still: its names in `home.yaml`. */
  readonly open?: readonly string[]
}

/** As a machine comes in. */
export const together: AsItStands = { setups: [], unsure: [], fading: [] }
