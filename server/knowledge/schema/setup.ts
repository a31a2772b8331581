import { z } from 'zod'
import { Minutes, Words } from './shared.ts'

/** What to do, and how long it takes. */
export const Doing = z.strictObject({
  do: Words,
  /** The same, in words to read to an owner on the phone. Left out: those. */
  phone: Words.optional(),
  minutes: Minutes,
})

export type Doing = z.infer<typeof Doing>

/**
 * How a set-up is put back; or `nothing`, where it leaves nothing behind that would be in the way of
 * another check; or `fades`, where it goes by itself, as heat does, and is made anew once it is gone.
 */
export const Undo = z.union([Doing, z.enum(['nothing', 'fades'])], {
  error: 'say how it is put back: do and minutes, or nothing, or fades',
})

/** What is done at a machine with something apart: the engine cranked, or running, or a meter read. */
const Act = z.enum(['cranking', 'running', 'measuring'])
export type Act = z.infer<typeof Act>
const Acts = z.array(Act).min(1)

/** What a set-up is in the way of while it holds. */
export const InTheWay = {
  /** What cannot or must not be done so, whatever needs it. */
  bars: Acts.optional(),
  /** What goes wrong so, but for a check that needs it. */
  spoils: Acts.optional(),
}
