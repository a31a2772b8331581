import { z } from 'zod'
import { quantities } from '../../measure/reading/quantities.ts'
import { Proof } from './proof.ts'
import { QuantityText } from './quantity-text.ts'
import { Chances, Name, Source, schemaKey, Words } from './shared.ts'
import { Does } from './wiring/does.ts'
import { Reads, readWhile } from './wiring/reads.ts'

/** Base rate of a failure mode, per 1000 machines that come in with an ignition or electrical complaint. */
export const Rate = z.strictObject({
  typical: z.number().positive().max(1000),
  /** Rates for parts with these roles, where they differ from the typical one. */
  roles: z.record(Name, z.number().positive().max(1000)).optional(),
  source: Source,
})

export const Mode = z.strictObject({
  id: Name,
  /** Completes "The lighting winding …": `is open`, `has shorted turns`. */
  says: Words,
  rate: Rate,
  /** What makes it come and go, where it does. */
  comesAndGoesWith: z.array(z.enum(['heat', 'cold', 'vibration', 'wet'])).optional(),
  /**
   * On one tower of a coil with two: the share of such failures that leave the other tower its spark. At 1 the mode
   * takes the cylinder that its part sits at, and no other.
   */
  sparesTwin: z.number().positive().max(1).optional(),
  /** By property: chance of each outcome when this mode is there. A property left out does not show it. */
  shows: z.record(Name, Chances),
  /** What it does physically, for a machine whose wiring is known. */
  does: Does.optional(),
  /** The same for parts with these roles, where they differ. */
  doesOn: z.record(Name, Does).optional(),
  /** How an owner far from a workshop puts it right. Left out: it belongs at the bench. */
  mend: z
    .strictObject({
      /** In words to read to an owner on the phone. */
      phone: Words,
      /** Chance that the trouble goes where this is its cause, above 0; left out: 1. */
      works: z.number().gt(0).max(1).optional(),
      /** What it takes, by name in the kit of `owner.yaml`. Left out: hands. */
      kit: z.array(Name).min(1).optional(),
      /** Names in `setups.yaml` that its words put back, so that nobody is told to once more. */
      undoes: z.array(Name).min(1).optional(),
      /** Names in `home.yaml`, `halfOpen`: what it opens and closes again, and what may be open where it is left half done. */
      opens: z.array(Name).min(1).optional(),
      /** Names in `cautions.yaml`. */
      cautions: z.array(Name),
    })
    .optional(),
  source: Source,
})

const usualSpan = { low: QuantityText, high: QuantityText }

const Usual = z.strictObject({
  ...usualSpan,
  /** For parts with these roles, where they differ. */
  roles: z.record(Name, z.strictObject(usualSpan)).optional(),
  source: Source,
})

/** What can be read or looked at on a part of this kind. */
const propertyOf = (measured: readonly string[]) =>
  z.strictObject({
    /** A measured quantity, or `answers` for something looked at or listened to. */
    quantity: z.enum([...measured, 'answers']),
    /** `copper` where a reading follows the temperature as a copper winding does. Left out: it does not. */
    material: z.literal('copper').optional(),
    /** Looked at only where the sheet gives no limits for this one, and nothing is measured instead. */
    unless: Name.optional(),
    /** Looked at only beside this one, where the sheet gives limits for it. */
    beside: Name.optional(),
    /** The same moment of the crankshaft in the other measure, which a sheet with its crank need not give. */
    as: Name.optional(),
    /** From and to where the limits of any machine lie. Left out: the lint compares with the other sheets. */
    usual: Usual.optional(),
    reads: Reads.optional(),
    ...readWhile,
    says: Words,
  })

/** The schema of part kinds whose properties are of these quantities. */
export const partKindOf = (measured: readonly string[]) =>
  z.strictObject({
    ...schemaKey,
    kind: Name,
    name: Words,
    /**
     * It stops the engine: with a connector apart that it is read at or through, it does not. `opening` where it
     * stops the engine by opening, so that bridging it does the same and a connector apart does not.
     */
    stops: z.union([z.literal(true), z.literal('opening')]).optional(),
    /** Its name is a plural: what its failure modes say goes on from "they". */
    plural: z.literal(true).optional(),
    /** All its properties come from it, on whichever part they are read: whatever is read so is read through it. */
    drives: z.boolean().optional(),
    /** It is a switch: how its contact stands with the controls as for work and the lamps off. */
    contact: z.enum(['open', 'closed']).optional(),
    properties: z.record(Name, propertyOf(measured)),
    modes: z.array(Mode).min(1),
    /** What it costs to fit a new one, and so what it costs to have been wrong. */
    cost: z
      .strictObject({
        /** In the shop's currency. */
        price: z.number().min(0),
        /** Minutes to fit it. */
        minutes: z.number().min(0).max(600),
        source: Source,
      })
      .optional(),
    /** What to do once this part is named, in one or two sentences. */
    repair: Words,
    /** How to prove the repair. */
    prove: Proof,
    /** Names of cautions that belong to the repair and its proof. */
    cautions: z.array(Name).optional(),
  })

export const PartKind = partKindOf(Object.keys(quantities))
export type Rate = z.infer<typeof Rate>
export type PartKind = z.infer<typeof PartKind>
export type Mode = z.infer<typeof Mode>
