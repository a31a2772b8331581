import { z } from 'zod'
import { gaugeSettings, meterSettings, type Setting } from '../../measure/reading/settings.ts'
import { QuantityText } from './quantity-text.ts'
import { Doing, InTheWay, Undo } from './setup.ts'
import { Minutes, Name, Place, Source, schemaKey, Words } from './shared.ts'

/** Ranges of an instrument for what it can be set to. */
const rangeOf = (settings: readonly Setting[]) =>
  z.strictObject({
    quantity: z.enum(settings),
    /** Top of the range and its last digit, with unit: 400 Ω, 0.1 Ω; of blades the step from one to the next. */
    top: QuantityText,
    digit: QuantityText,
    /** Percent of reading, and counts of the last digit. */
    percent: z.number().min(0).max(20),
    counts: z.number().min(0).max(50),
  })

/** `trees/tools.yaml` */
export const Tools = z.strictObject({
  ...schemaKey,
  /** What may be at hand, chosen at one press when a job is opened, in this order. */
  sets: z.record(
    Name,
    z.strictObject({
      name: Words,
      /** It holds the tools that are usual there. Left out: none, hands and eyes. */
      place: Place.optional(),
    }),
  ),
  tools: z.record(
    Name,
    z.strictObject({
      name: Words,
      /** Where one has it as a rule; such tools are in the set of that place. */
      usual: z.array(Place),
      /** It is only used in air that is warmer, °C. */
      above: z.number().optional(),
      /** It is a gauge: what it reads, and how well. */
      reads: z
        .strictObject({ ranges: z.array(rangeOf(gaugeSettings)).min(1), source: Source })
        .optional(),
    }),
  ),
})
export type Tools = z.infer<typeof Tools>

/** `trees/setups.yaml`: things to fit or take off that are no connector and no cover of one machine. */
export const Setups = z.strictObject({
  ...schemaKey,
  setups: z.record(
    Name,
    Doing.extend({
      name: Words,
      undo: Undo,
      /** Of what fades: how long it serves, and what is said to whoever needs it once more in that time. */
      lasts: Doing.optional(),
      ...InTheWay,
      /** Set-ups that cannot hold at the same time. */
      excludes: z.array(Name).optional(),
      /** The stop switch does nothing while it holds, so the check that needs it ends with putting it back. */
      stopOff: z.boolean().optional(),
      /** It is there so that the engine can run, a proof included, and is put back after that. An owner does none of it. */
      forRun: z.literal(true).optional(),
      tools: z.array(Name).optional(),
      source: Source,
    }),
  ),
})
export type Setups = z.infer<typeof Setups>

/** `trees/cautions.yaml`. Signal words as in ANSI Z535 / ISO 3864. */
export const Cautions = z.strictObject({
  ...schemaKey,
  cautions: z.record(
    Name,
    z.strictObject({
      signal: z.enum(['danger', 'warning', 'caution', 'notice']),
      /** What to do or leave, in one line: all that stands where the rest was read on this job before. */
      command: Words.max(
        72,
        'say it in 72 characters or fewer: it has to fit two lines of a phone',
      ),
      says: Words,
      phone: Words,
      /** What an owner is reminded of who has heard it before: half a sentence, "hands off the leads". */
      reminds: Words,
      /** The lint refuses a check or a proof of this kind that does not carry the caution. */
      neededWhen: z
        .strictObject({
          engine: z.array(z.enum(['stopped', 'cranking', 'running'])).optional(),
          tools: z.array(Name).optional(),
          quantity: z.array(Name).optional(),
          setups: z.array(Name).optional(),
        })
        .optional(),
      /**
       * Words in a step, a set-up, a repair or a proof that ask for it, whatever else is so. Matched as whole
       * words, whether written large or small.
       */
      words: z.array(Words).min(1).optional(),
      /** By these words a step, a set-up or a way back says that it waits so many minutes after the engine last turned. */
      waits: z.strictObject({ words: Words, minutes: Minutes }).optional(),
      /** Stands on every page that instructs, so no check needs to name it. */
      everywhere: z.boolean().optional(),
      /** Shown for work at this place; with `afloat` on the water there, otherwise on land. */
      place: Place.optional(),
      afloat: z.literal(true).optional(),
      /** Shown when the engine is hot. */
      hot: z.boolean().optional(),
      /** Shown only of a machine that has a part of one of these roles. Left out: of any. */
      roles: z.array(Name).min(1).optional(),
      source: Source,
    }),
  ),
})
export type Cautions = z.infer<typeof Cautions>
export type Signal = Cautions['cautions'][string]['signal']

/** `trees/colours.yaml`: wire colours, IEC 60757. */
export const Colours = z.strictObject({
  ...schemaKey,
  source: Source,
  colours: z.record(
    z.string().regex(/^[A-Z]{2}$/, 'two capital letters as in IEC 60757'),
    z.strictObject({
      name: Words,
      /** What the swatch is filled with; the name always stands beside it. */
      swatch: z.string().regex(/^#[0-9a-f]{6}$/, 'write the swatch as #rrggbb in lower case'),
    }),
  ),
})
export type Colours = z.infer<typeof Colours>

/** `trees/groups.yaml`: what complaints are about, in the order in which pages show them. */
export const Groups = z.strictObject({
  ...schemaKey,
  groups: z.record(Name, z.strictObject({ name: Words })),
})
export type Groups = z.infer<typeof Groups>

/** `trees/roles.yaml`: what a part is for on its machine, in the order in which it is told. */
export const Roles = z.strictObject({
  ...schemaKey,
  roles: z.record(
    Name,
    z.strictObject({
      /** Completes "The exciter …": charges the igniter. */
      says: Words,
      /** The kinds of part that can play it. */
      kinds: z.array(Name).min(1),
    }),
  ),
})
export type Roles = z.infer<typeof Roles>

/** `trees/meters/*.yaml`: a class of meter. */
export const Meter = z.strictObject({
  ...schemaKey,
  id: Name,
  name: Words,
  about: Words,
  ranges: z.array(rangeOf(meterSettings)).min(1),
  source: Source,
})
export type Meter = z.infer<typeof Meter>
