import { z } from 'zod'
import { Barring } from './barring.ts'
import { Need } from './need.ts'
import { HomeWith } from './phone/home.ts'
import { Proof } from './proof.ts'
import { Name, Source, schemaKey, Words } from './shared.ts'

/** Above 0, or it would be no cause; 1 is what is left out. */
const Brings = z.number().gt(0).max(1)

/**
 * An input of a gate. `any: exciter` stands for one input per part of that role (each holds when any of
 * its failure modes does); `each: output-dead` for one per copy of a `per: output` gate, or per part.
 * `any` goes with `or`, `each` with `and` and `atLeast`.
 */
const GateInput = z.union([
  z.strictObject({ gate: Name }),
  z.strictObject({
    any: Name,
    modes: z.array(Name).min(1).optional(),
    except: z.array(Name).min(1).optional(),
    /**
     * How often whoever has such a failure comes with this complaint and not with another one, or none. Where one cylinder
     * of three or more is hardly missed, `less` says it for a part that serves less than half of the outputs, and `half`
     * for any other.
     */
    brings: z.union([Brings, z.strictObject({ half: Brings, less: Brings })]).optional(),
  }),
  z.strictObject({ each: Name, modes: z.array(Name).min(1).optional() }),
])
export type GateInput = z.infer<typeof GateInput>

export const ComplaintGate = z.strictObject({
  /** What it means when this gate holds: "No supply reaches the igniter". May hold {output}. */
  says: Words,
  /** `output`: one copy for each output of the sheet; roles below it mean that output's own parts. */
  per: z.literal('output').optional(),
  /** It is only drawn on a machine that has what each of these asks for; it can hold on no other. */
  needs: z.array(Need).min(1).optional(),
  or: z.array(GateInput).min(1).optional(),
  and: z.array(GateInput).min(1).optional(),
  atLeast: z.strictObject({ k: z.int().min(1), of: z.array(GateInput).min(1) }).optional(),
})

/** Far more than any complaint needs; what checks them looks from each gate at all others. */
const mostGates = 1000

const Gates = z
  .record(Name, ComplaintGate)
  .refine((gates) => Object.keys(gates).length <= mostGates, {
    error: `write at most ${mostGates} gates; split the complaint in two`,
  })

export const Complaint = z.strictObject({
  ...schemaKey,
  id: Name,
  title: Words,
  /** What it is about: a name in `groups.yaml`. */
  group: Name,
  /** What the owner says. */
  owner: Words,
  /** The complaint fits a machine that has what each of these asks for. */
  needs: z.array(Need).min(1),
  /** What the complaint itself makes unsafe until a check of some kind has been made, on a machine that has it. */
  bars: z.array(Barring).min(1).optional(),
  top: Name,
  gates: Gates,
  /** Gates that checks and questions look at but that are no branch of the tree: "no pulse at the coil". */
  watched: Gates.optional(),
  /** Share of such complaints that have a cause this tree does not hold. */
  elsewhere: z.strictObject({
    share: z.number().gt(0).lt(1),
    /** A gate written `per: output` that such a cause holds at one of them, and nobody knows at which. */
    holds: Name.optional(),
    says: Words,
    source: Source,
  }),
  /**
   * For a complaint that comes and goes: the least share of readings that come out well because the fault has
   * gone meanwhile, whatever its part kind says of one that stays.
   */
  gone: z.strictObject({ share: z.number().gt(0).lt(1), source: Source }).optional(),
  /**
   * The fixed order a printed chart would go in: names of check kinds, each made at every part and place
   * before the next. What the tool's own order is measured against.
   */
  chart: z.array(Name).min(1).optional(),
  /** How to prove the complaint itself is gone, after the repair. */
  prove: Proof,
  /** Names of cautions that belong to that proof. */
  cautions: z.array(Name).optional(),
  /** What an owner far from a workshop may try to get home with it, and what not. */
  home: HomeWith,
})
export type Complaint = z.infer<typeof Complaint>
export type ComplaintGate = z.infer<typeof ComplaintGate>
