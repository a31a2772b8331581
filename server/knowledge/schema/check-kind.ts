import { z } from 'zod'
import { AnswerBarring } from './barring.ts'
import { OwnerFit } from './phone/owner.ts'
import { Chances, Minutes, Name, Place, Source, schemaKey, Words } from './shared.ts'

/**
 * Reads one property of one part. Made once for each part whose kind has the property (and whose sheet
 * gives limits, if it is measured) at each place the sheet says it can be reached.
 * The chances come from the failure modes of the part and of every part on the path.
 */
const OfProperty = z.strictObject({
  kind: z.literal('property'),
  property: Name,
  /** Only parts with one of these roles. Left out: all. */
  roles: z.array(Name).optional(),
  /** Only in complaints that have one of these gates: an engine that does not start cannot be run hot. */
  within: z.array(Name).min(1).optional(),
  /** Chance of each outcome when the part and its path are healthy. */
  healthy: Chances,
  /** The same at a place that the sheet calls awkward to touch. */
  awkward: Chances.optional(),
  /** Where the cause is none of the tree, and leaves its marks on the part all the same. Left out: as `healthy`. */
  elsewhere: Chances.optional(),
})

/**
 * Watches whether a gate of the complaint holds, as things are or after something was changed.
 * Made once for each copy of the gate (a gate written `per: output` has one an output).
 */
const OfGate = z.strictObject({
  kind: z.literal('gate'),
  gate: Name,
  /** The faults below this gate are taken out of play: `stopped` for "with the stop circuit unplugged". */
  without: Name.optional(),
  /** A known good one stands in for each part of this role in turn. */
  replacing: Name.optional(),
  /** The parts of this role change places between two outputs. */
  swapping: Name.optional(),
  /** For a measured gate: whose limits and place hold. Named by role and property. */
  measured: z.strictObject({ role: Name, property: Name }).optional(),
  holds: Chances,
  holdsNot: Chances,
  /**
   * What faults below the gate show here, each in its own way: a property of part kinds, whose rows stand in for
   * `holds`. A fault that says nothing of it shows as `holds` does.
   */
  shows: Name.optional(),
  /** Only parts with one of these roles show it in ways of their own. Left out: all. */
  roles: z.array(Name).min(1).optional(),
  /**
   * It looks at the spark at a cap, or at the best of all: each answer with the least spark that gives it, where 1 is
   * that of a good machine on a modest pull. The practice bench answers by it where the wiring tells.
   */
  spark: z.record(Name, z.number().min(0).max(2)).optional(),
  /**
   * Where the cause is none of the tree. Left out: `holdsNot`, since no gate holds then; where the top of the
   * tree itself is watched after a change, `holds`, since that cures nothing outside the tree.
   */
  elsewhere: Chances.optional(),
})

/** Asks something. The first gate in the list that holds gives the chances. Made once. */
const OfQuestion = z.strictObject({
  kind: z.literal('question'),
  /** Only where one of these gates is there: with a single control nobody asks which of two it was. */
  within: z.array(Name).min(1).optional(),
  when: z.array(z.strictObject({ gate: Name, chances: Chances })).min(1),
  otherwise: Chances,
})

/** Asks for which of the outputs a gate holds, in one question with an answer for each. Made once. */
const OfOutputs = z.strictObject({
  kind: z.literal('which'),
  /** A gate written `per: output`. */
  gate: Name,
  /** What the answers are called: "The {output}". */
  answer: Words,
  /** Share of answers that name an output for which it holds; the others get what is left, evenly. */
  named: z.number().gt(0.5).lt(1),
})

export const About = z.discriminatedUnion('kind', [OfProperty, OfGate, OfQuestion, OfOutputs])

/** A named answer to a check that is not read off a meter. */
export const Answer = z.strictObject({
  id: Name,
  says: Words,
  phone: Words.optional(),
  /** It speaks of several outputs: on a machine with one it is not offered, and counts as this answer. */
  onOne: Name.optional(),
  /** What was seen can be put right there and then, and may have been it all. */
  mend: z
    .strictObject({
      /** How, in one or two sentences. */
      do: Words,
      /** The same, in words to read to an owner on the phone. */
      phone: Words.optional(),
      /** What it takes of an owner beside the tools of the check, by name in the kit of `owner.yaml`. Left out: hands. */
      kit: z.array(Name).min(1).optional(),
      /** Names in `setups.yaml` that its words put back, so that nobody is told to once more. */
      undoes: z.array(Name).min(1).optional(),
      /** Names in `home.yaml`, `halfOpen`: what it opens and closes again, and what may be open where it is left half done. */
      opens: z.array(Name).min(1).optional(),
      /** Names in `home.yaml`, `halfOpen`: what it sets otherwise, and what goes back where it was in vain. */
      stays: z.array(Name).min(1).optional(),
      /** Whose fault it was then. Left out: the part that was looked at. */
      roles: z.array(Name).min(1).optional(),
      /** It was no part of the tree then: whoever is cured by it writes down what it was. */
      elsewhere: z.literal(true).optional(),
      /** Names in `cautions.yaml`, besides those of the check. */
      cautions: z.array(Name).min(1).optional(),
    })
    .optional(),
  /**
   * After this answer nothing is done with the engine so, nor a check of these kinds made, until a check of that kind has
   * been made, or as long as the answer stands.
   */
  bars: AnswerBarring.optional(),
  /** Said before anything is touched, so that what the check has put back and made ready may be as it was. */
  untouched: z.literal(true).optional(),
  /** Cautions that are said whole once more before the engine turns next, whoever has heard them: it smells of fuel. */
  renews: z.array(Name).min(1).optional(),
  /** Ways home, by name in `home.yaml`, that were tried with it in vain: nobody is sent to do the same once more. */
  inVain: z.array(Name).min(1).optional(),
})

/** Words in a check may hold: {part} {output} {place} {pins} {wires} {limits} {connector} {role} {ground} {gap} {run} {start} {off} {turn} {held} {work} */
export const CheckKind = z.strictObject({
  ...schemaKey,
  id: Name,
  title: Words,
  about: About,
  /**
   * Left out where the check is measured: the outcomes are then the bands of the quantity; and where it asks which
   * output it is.
   */
  answers: z.array(Answer).min(2).optional(),
  /**
   * Made again it would come out the same: an owner remembers, and dirt that is seen is seen the second
   * time too, harmless or not. A check about a question always does.
   */
  lasting: z.boolean().optional(),
  /** It cools or starts what was run hot for it, so what `fades` is gone after it. */
  cools: z.boolean().optional(),
  /** Somebody is only asked: nobody touches the machine, so it stays as it stands. */
  asked: z.boolean().optional(),
  engine: z.enum(['stopped', 'cranking', 'running']),
  where: z.array(Place).min(1),
  /** Names in `tools.yaml`. Empty: hands and eyes. */
  tools: z.array(Name),
  /**
   * Checks that name the same here look at the same things, and list their answers mildest first: at the practice bench
   * they find them alike.
   */
  looksAt: Name.optional(),
  /** What to set the meter to. Needed where the check is measured. */
  meter: Words.optional(),
  /** Where a check of a gate or a question is made: at the part of this role, where this property of it is read. */
  place: z.strictObject({ role: Name, property: Name.optional() }).optional(),
  /** What is taken apart first: the connector at the `place`, or every connector that the `part` hangs on. */
  apart: z.enum(['place', 'part']).optional(),
  /** It reads so many places: all readings are entered together, and the one that is furthest out counts. */
  places: z.int().min(2).max(6).optional(),
  /**
   * What is read is moved meanwhile, and the worst that shows is entered: of several values of one take the highest
   * counts, and its pins are not cleaned for another take, as they may be what is wrong.
   */
  moved: z.literal(true).optional(),
  /** Diodes read both ways: a field for each reading, from which the answer follows. */
  oneWay: z
    .strictObject({
      /** What the probes touch in turn. */
      places: z.array(Words).min(2).max(6),
      /** In the order of the steps: how the probes are held, and whether a good one passes so. */
      directions: z
        .array(z.strictObject({ says: Words, passes: z.boolean() }))
        .min(2)
        .max(4),
      /** V: so much may those that pass differ, of one row. */
      apart: z.number().positive(),
      /** V: one that should not pass and reads less is shorted. */
      short: z.number().positive(),
      /** The answer that each outcome is. */
      tells: z.strictObject({ alike: Name, open: Name, shorted: Name }),
    })
    .optional(),
  /** The steps warm the part to this, °C: so it is taken to be, unless another temperature is entered. */
  warmedTo: z.number().min(20).max(120).optional(),
  /** Names in `setups.yaml`. */
  setups: z.array(Name).optional(),
  /** Set-ups that are in its way, besides those that follow from what is done. */
  forbids: z.array(Name).optional(),
  /** The engine stays stopped, and yet all is joined and on as if it were to be cranked: it looks at the whole wiring. */
  whole: z.literal(true).optional(),
  minutes: Minutes,
  do: z.array(Words).min(1),
  /** The same, in words to read to an owner on the phone. */
  phone: Words,
  /** One line for the apprentice. */
  why: Words,
  /** Two to five sentences more, as an old hand says them: why now, what the trap is, what a wrong reading looks like. */
  teach: Words.optional(),
  cautions: z.array(Name),
  source: Source,
  /** Whether an owner on the phone can make it. */
  owner: OwnerFit,
})
export type CheckKind = z.infer<typeof CheckKind>
export type About = z.infer<typeof About>
export type Answer = z.infer<typeof Answer>
