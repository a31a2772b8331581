import { z } from 'zod'
import { Need } from '../need.ts'
import { Name, Source, schemaKey, Words } from '../shared.ts'

/** One way to get out of where nobody can repair it. */
const Way = z.strictObject({
  /** "Run it with the stop wire apart" */
  says: Words,
  /** Only on a machine that has what each of these asks for. Left out: on any. */
  roles: z.array(Need).min(1).optional(),
  /** Not on a machine that drives a boat. */
  onLand: z.literal(true).optional(),
  /** What it takes, by name in the kit of `owner.yaml`. Left out: hands. */
  kit: z.array(Name).min(1).optional(),
  /** One sentence at a time, to read out. */
  do: z.array(Words).min(1),
  /**
   * Chance that it runs then, where the cause is what the way gets around; what came of it is held against that. Left
   * out: whether it helps says nothing of the cause.
   */
  works: z.number().gt(0.2).max(1).optional(),
  /** The failure modes that it gets around, where it is not all of them: a cap that is pushed on again may be cracked. */
  modes: z.array(Name).min(1).optional(),
  /** What it costs: what is no longer safe then. */
  danger: Words,
  /** The same on the water, where that is otherwise. */
  afloat: Words.optional(),
  /** It holds while they go as well, and is said once more when they are off. */
  dangerLasts: z.literal(true).optional(),
  /** Hands have to go below covers: it is said that they come off, and that they go on again before the start. */
  uncovers: z.literal(true).optional(),
  /** Names in `halfOpen`: what it opens and closes again. */
  opens: z.array(Name).min(1).optional(),
  /** Names in `halfOpen`: what it sets otherwise and leaves so, and what goes back before anything else is tried. */
  stays: z.array(Name).min(1).optional(),
  /** Hands were on what stops it, so its stop is tried as soon as it runs, whether that was due or not. */
  triesStop: z.literal(true).optional(),
  /** What it takes of their kit is in the machine afterwards, so it is tried once. */
  usesUp: z.literal(true).optional(),
  /** Set-ups that hold from then on, by name in `setups.yaml`: whoever has it next puts them back. */
  leaves: z.array(Name).min(1).optional(),
  /** Names in `cautions.yaml`. */
  cautions: z.array(Name),
  source: Source,
})

/** `trees/home.yaml`: how to get home with a machine that fails, and when to stay and call. */
export const Home = z.strictObject({
  ...schemaKey,
  /** What may be tried. Which complaint it helps with, the complaint says. */
  ways: z.record(Name, Way),
  /** What must not be tried. */
  never: z.record(Name, Words),
  /** What is said where a way `uncovers`: once it cannot start, and before it is started. */
  covers: z.strictObject({ before: Words, after: Words }),
  /** Said before a way is started, whatever was apart. */
  whole: Words,
  /** Said before it is started for a trial or a way home: it may have been opened to dry the engine. */
  choke: Words,
  /** What is opened to put something right or to get home, and how it is closed again: nobody knows how far they had come. */
  halfOpen: z.record(Name, z.array(Words).min(1)),
  /** By name in `halfOpen`: sentences of a way back that only serve a run, left out where none comes or a way opens it. */
  toRun: z.record(Name, z.array(Words).min(1)),
  /** Said before the first hand goes to it. */
  off: Words,
  /** Said after that, once they were off with it or on their way: what held it is undone. */
  held: Words,
  /** Said after a check that has it run, and ends with its question. */
  stopIt: Words,
  /** How it is left, whatever was tried last. */
  rest: z.array(Words).min(1),
  /** Whether it is gone, once something was put right. */
  trial: z.strictObject({
    /** How it is tried, one sentence at a time, where the complaint says nothing of its own. */
    do: z.array(Words).min(1),
    /** How what held it is let go on land; on the water `afloat.go` holds. */
    go: z.array(Words).min(1),
    /** What comes before that on a machine with no words of its own for how it is held: it may be lifted. */
    lifted: Words,
    /** What to mind once it is gone, before they go. */
    after: z.array(Words).min(1),
    /** Names in `cautions.yaml`. */
    cautions: z.array(Name),
  }),
  /** When to stay where one is and call for help, whatever the complaint. */
  stay: z.array(Words).min(1),
  /**
   * On the water: what comes before any way, what comes once it runs, what else must never be tried, and when to stay
   * and call.
   */
  afloat: z.strictObject({
    /** On land, of a trouble that shows only at work: where it is tried. */
    ashore: Words,
    first: z.array(Words).min(1),
    /** What comes before `go` where it was tried on land. */
    launch: z.array(Words).min(1),
    go: z.array(Words).min(1),
    never: z.array(Words).min(1),
    stay: z.array(Words).min(1),
  }),
})
export type Home = z.infer<typeof Home>

/** What of it belongs to one complaint. */
export const HomeWith = z.strictObject({
  /** Ways to try, each with the gates that it gets around: the likelier one of them holds, the earlier it is said. */
  try: z.record(Name, z.array(Name).min(1)),
  /** Ways that are not tried where one of these gates holds more likely than not. */
  unless: z.record(Name, z.array(Name).min(1)).optional(),
  /** Names of what must not be tried. */
  never: z.array(Name).min(1),
  /** How an owner tries whether it is gone, where it is done otherwise. None: it cannot be tried on the spot. */
  trial: z.array(Words).optional(),
  /** The last step of the trial is made under way: what held it is undone, and a boat cast off, before that. */
  moves: z.literal(true).optional(),
})
export type HomeWith = z.infer<typeof HomeWith>
