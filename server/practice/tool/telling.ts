import { checkNamed } from '../../diagnosis/belief/belief.ts'
import { likeliest } from '../../diagnosis/belief/likeliest.ts'
import { mixed } from '../../diagnosis/model/chances.ts'
import type { Model } from '../../diagnosis/model/model.ts'
import { numbered } from '../../diagnosis/model/named.ts'
import type { Suspect } from '../../diagnosis/model/walk.ts'
import type { Known } from '../round/belief.ts'

/** Who is among the foremost: at least this likely, and at most so many. From memory. */
const foremost = { least: 0.03, most: 6 }

/** Chances that differ by less than this tell nobody anything. From memory. */
const clear = 0.2

/** A part, or null for what is not listed. */
export type Part = Suspect['part']

/** The foremost suspects of a check, by whether they show in it what is shown most often. */
export interface Apart {
  readonly showing: readonly Part[]
  readonly otherwise: readonly Part[]
  /** Where the foremost all show alike: the one behind them that clearly does not. */
  readonly behind?: Suspect
}

/** The foremost suspects that a check tells apart: those that clearly less often show what is usual, and the rest. */
export function toldApart(model: Model, check: string, { belief, suspects }: Known): Apart {
  const { chances } = checkNamed(model, check)
  const rowOf = (part: Part) => {
    const own = model.cutSets.flatMap(({ parts }, i) =>
      (part === null ? parts.length === 0 : parts.includes(part)) ? [i] : [],
    )
    const sum = own.reduce((total, i) => total + numbered(belief, i), 0)
    return mixed(
      own.map((i) => (sum > 0 ? numbered(belief, i) / sum : 1 / own.length)),
      own.map((i) => numbered(chances, i)),
    )
  }
  const front = suspects
    .filter(({ probability }) => probability >= foremost.least)
    .slice(0, foremost.most)
  const rows = new Map(suspects.map(({ part }) => [part, rowOf(part)]))
  const row = (part: Part) => rows.get(part) ?? rowOf(part)
  if (front.length === 0) return { showing: [], otherwise: [] }
  const usual = likeliest(
    mixed(
      front.map(({ probability }) => probability),
      front.map(({ part }) => row(part)),
    ),
  )
  const shows = ({ part }: Suspect) => row(part)[usual] ?? 0
  const most = Math.max(...front.map(shows))
  const isOtherwise = (suspect: Suspect) => shows(suspect) < most - clear
  const partOf = ({ part }: Suspect) => part
  const otherwise = front.filter(isOtherwise).map(partOf)
  const behind = otherwise.length === 0 ? suspects.find(isOtherwise) : undefined
  return {
    showing: front.filter((each) => !isOtherwise(each)).map(partOf),
    otherwise,
    ...(behind && { behind }),
  }
}

/** The part that a reading moved most, from what it was to what it is; undefined where it moved none to speak of. */
export function movedMost(before: Known, after: Known): Moved | undefined {
  const was = new Map(before.suspects.map((each) => [each.part, each.probability]))
  const moved = after.suspects.map((now): Moved => ({ ...now, before: was.get(now.part) ?? 0 }))
  const by = ({ before: from, probability }: Moved) => Math.abs(probability - from)
  const most = moved.reduce<Moved | undefined>(
    (best, each) => (best === undefined || by(each) > by(best) ? each : best),
    undefined,
  )
  return most !== undefined && by(most) >= little ? most : undefined
}

export interface Moved extends Suspect {
  readonly before: number
}

/** What nobody would notice. */
const little = 0.02
