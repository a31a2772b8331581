import { z } from 'zod'
import { Minutes, Name, Source, schemaKey, Words } from '../shared.ts'

/** `trees/owner.yaml`: what an owner on the phone may have with them, and what their answers are worth. */
export const Owner = z.strictObject({
  ...schemaKey,
  /** What the owner is asked for once, in this order. */
  kit: z.record(
    Name,
    z.strictObject({
      /** In the owner's words: "A spanner that fits the spark plugs". */
      asks: Words,
      /** Tools of `tools.yaml` that it stands for. Left out: none, but a check can ask for it by this name. */
      gives: z.array(Name).min(1).optional(),
    }),
  ),
  /** What owners carry, chosen at one press, in this order. */
  sets: z.record(Name, z.strictObject({ name: Words, kit: z.array(Name) })),
  /** The class of meter that owners have, by name in `meters/`. */
  meter: Name,
  answers: z.strictObject({
    /** Share of an owner's answers that say nothing about the machine: misheard, misread or guessed. */
    astray: z.number().gt(0).lt(1),
    /** To say a step and hear that it is done takes so many times as long as to do it. */
    pace: z.number().min(1).max(5),
    /** Minutes more for each check that hands do: the cautions, and what is said besides. */
    talk: Minutes,
    /** Minutes more for each reading of a meter that somebody has to be talked through. */
    metering: Minutes,
    /**
     * An easy question comes before what tells more only if that costs at most what is left of its own minutes once it
     * has won back this share of them: whoever is out there has enough of questions soon.
     */
    earns: z.number().min(0).max(1),
    source: Source,
  }),
  /** Who brought a machine to the bench does not stay: minutes to reach them for a question, and be answered. */
  gone: z.strictObject({ minutes: Minutes, source: Source }),
  /** Bare hands in the cold. */
  cold: z.strictObject({
    /** °C. */
    below: z.number(),
    /** Name in `kit` of what helps against it. */
    without: Name,
    /** Nothing that takes longer than so many minutes then. */
    most: Minutes,
    source: Source,
  }),
})
export type Owner = z.infer<typeof Owner>

/** Whether a check can be left to an owner on the phone: yes, yes with some of the kit, or the reason why not. */
export const OwnerFit = z.union(
  [
    z.literal('yes'),
    z.strictObject({ needs: z.array(Name).min(1) }),
    Words.min(12, 'say in a sentence why not'),
  ],
  {
    error:
      'write yes, what it needs besides its tools, or in a sentence why it is not for an owner',
  },
)
export type OwnerFit = z.infer<typeof OwnerFit>
