import { z } from 'zod'
import { Name } from '../shared.ts'

/**
 * Where the wiring of a machine is known, a reading of this property follows from it: `ohms` between the touched
 * places, those of the `secondary`, alone or as far as the contact in the cap, the `peak` of what the part makes, open or
 * at work, the `pulse` that a box sends to a coil, or the `volts` there while the machine works.
 * Left out: from the rows of chances.
 */
export const Reads = z.enum([
  'ohms',
  'secondary',
  'secondary-to-caps',
  'peak',
  'peak-at-work',
  'pulse',
  'volts',
])
export type Reads = z.infer<typeof Reads>

/** How the machine stands meanwhile, where that is not as for work. */
export const readWhile = {
  /** The switch that is read is worked, or all of these roles are: at OFF, let go, lamps on. */
  worked: z.union([z.literal('itself'), z.array(Name).min(1)]).optional(),
  key: z.enum(['off', 'run', 'start']).optional(),
  /** At the volts of an insulation tester. */
  loaded: z.literal(true).optional(),
}
