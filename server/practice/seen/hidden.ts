import type { Case } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { TrueMachine } from '../world/machine.ts'
import type { Meter } from '../world/meter.ts'

/** A machine of a case with a fault hidden in it, the weather, and the meter at hand. All of it from the seed. */
export interface Hidden {
  readonly knowledge: Knowledge
  readonly kase: Case
  readonly seed: number
  /** Its place among the cut sets of the case. */
  readonly cutSet: number
  readonly faults: readonly string[]
  readonly parts: readonly string[]
  /** Null where it is not known how the machine is wired. */
  readonly truth: TrueMachine | null
  /** °C of the air and of all that nobody has warmed. */
  readonly air: number
  readonly meter: Meter
  /** Ω of the two leads of the meter together. */
  readonly leads: number
}
