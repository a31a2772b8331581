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

/** The foremost suspects of a check, by whether they show in it what is shown most often. */
export interface Apart {
  readonly showing: readonly string[]
  readonly otherwise: readonly string[]
}

/** The foremost suspects that a check tells apart: those that clearly less often show what is usual, and the rest. */
export function toldApart(model: Model, check: string, { belief, suspects }: Known): Apart {
  const { chances } = checkNamed(model, check)
  const parts = suspects
    .filter(({ probability }) => probability >= foremost.least)
    .flatMap(({ part }) => part ?? [])
    .slice(0, foremost.most)
  const cutSetsOf = (part: string) =>
    model.cutSets.flatMap((cutSet, i) => (cutSet.parts.includes(part) ? [i] : []))
  const rowOf = (cutSets: readonly number[]) => {
    const sum = cutSets.reduce((total, i) => total + numbered(belief, i), 0)
    const weights = cutSets.map((i) => numbered(belief, i) / sum)
    return mixed(
      weights,
      cutSets.map((i) => numbered(chances, i)),
    )
  }
  if (parts.length === 0) return { showing: [], otherwise: [] }
  const usual = likeliest(rowOf(parts.flatMap(cutSetsOf)))
  const shows = new Map(parts.map((part) => [part, rowOf(cutSetsOf(part))[usual] ?? 0]))
  const most = Math.max(...shows.values())
  const isOtherwise = (part: string) => (shows.get(part) ?? 0) < most - clear
  return {
    showing: parts.filter((part) => !isOtherwise(part)),
    otherwise: parts.filter(isOtherwise),
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
