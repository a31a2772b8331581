import type { Effect, Where } from '../effect.ts'
import type { TrueMachine } from '../machine.ts'

export type KeyAt = 'off' | 'run' | 'start'

/** The machine at one moment. */
export interface Moment {
  readonly truth: TrueMachine
  /** Connectors pulled apart. */
  readonly apart: ReadonlySet<string>
  /** Switches that stand otherwise than for work: at OFF, let go, lamps on. */
  readonly worked: ReadonlySet<string>
  readonly key: KeyAt
  /** What meets it is an insulation tester or the machine's own voltage, and not the few volts of a meter. */
  readonly loaded: boolean
  /** °C of a part. */
  celsius(part: string): number
}

/** The machine as it stands at work, all joined, at one temperature. */
export const together = (truth: TrueMachine, celsius = 20): Moment => ({
  ...{ truth, apart: new Set(), worked: new Set(), key: 'run', loaded: false },
  celsius: () => celsius,
})

const sound: Effect = { leg: 0 }

/**
 * What is wrong with a part at this moment: what heat opens is closed again below its temperature.
 *
 * @param of what of the part is asked for, where it has more than one thing that can fail
 */
export function effectNow({ truth, loaded, celsius }: Moment, part: string, of?: Where): Effect {
  const effect = truth.effect(part)
  const { above = -Infinity, underLoad = false } = effect
  const isThere = effect.of === of && celsius(part) > above && (loaded || !underLoad)
  return isThere ? effect : sound
}
