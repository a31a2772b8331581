import type { CautionCard } from '../../../knowledge/case.ts'
import type { HalfDone } from '../../record/events.ts'
import { repairedInVain } from '../../record/fold.ts'
import type { Standing } from '../../standing/standing.ts'
import { perhapsOpened } from '../../standing/way/perhaps.ts'
import type { AsItStands } from '../../standing/way/state.ts'
import { likelyModes } from '../../verdict/named.ts'
import { askedNow } from '../asked-now.ts'
import { partsFound, partsTogether } from '../found.ts'
import { onTheWay } from '../home/on-the-way.ts'
import { trialOf } from '../start/trial.ts'
import { alikeOf } from './cures.ts'
import { coversOff, liesCovered } from './lies-covered.ts'
import { mendOf, partsTold, wasDone } from './told.ts'

/** Something that an owner can put right there and then, and that may have been it all. */
export interface Mending {
  /** The check whose answer told of it, or the part that is suspected. */
  readonly of: string
  /** How, in words for an owner. */
  readonly phone: readonly string[]
  /** Names of the set-ups that it puts back. */
  readonly undoes?: readonly string[]
  /** Names of what it opens, and no set-up knows of. */
  readonly opens?: readonly string[]
  /** The same of what it sets otherwise, and what goes back where that was in vain. */
  readonly stays?: readonly string[]
  /** It is done already, and only tried. */
  readonly isDone?: true
  /** The failure that it was told for, where a part is suspected. */
  readonly fault?: string
  /** Whose fault it was, if that cures it. */
  readonly parts: readonly string[]
  /** Others that were named together with a suspected part, and need the same. */
  readonly also?: readonly string[]
  readonly cautions: readonly CautionCard[]
}

/**
 * What an owner has seen that can be put right, and has not been told to yet; the latest first. What is done and could
 * not be tried then comes once more as soon as it can.
 */
export function mendingSeen(input: Standing): Mending | undefined {
  const { kase, folded, judged } = input
  if (folded.repairs.some(({ outcome }) => outcome === 'gone')) return undefined
  const inVain = repairedInVain(folded)
  const told = [...folded.readings].filter(([, { conditions }]) => conditions.who === 'owner')
  return told
    .toReversed()
    .flatMap(([check]): Mending[] => {
      const card = kase.checks.get(check)
      const mend = mendOf({ kase, judged }, check)
      const came = folded.putRight.get(check)
      // Where they have nothing to do it with, they can do it no more than where they could not.
      if (mend && lacking(folded, mend).length > 0) return []
      const isDone = came === 'done' && trialOf(input) !== undefined
      if (card === undefined || mend === undefined || (came !== undefined && !isDone)) return []
      if (mend.parts.some((part) => inVain.includes(part))) return []
      if (came === undefined && wasDone(input, check, mend)) return []
      const { phone, parts, cautions = [], kit: _, ...rest } = mend
      return isDone
        ? [{ of: check, phone: [], parts, cautions: [], isDone }]
        : [
            {
              ...rest,
              ...opensOf(input, { of: check, parts }, rest),
              of: check,
              parts,
              phone: [phone],
              cautions: [...card.cautions, ...cautions],
            },
          ]
    })
    .at(0)
}

/** What an owner has not got of what it takes, by name. */
export const lacking = (
  { conditions: { kit: own = [] } }: Pick<Standing['folded'], 'conditions'>,
  { kit = [] }: { readonly kit?: readonly string[] },
): string[] => kit.filter((thing) => !own.includes(thing))

/** Below this chance of it, nobody is told to put right what nobody has seen. From memory. */
const worthTrying = 0.05

/** The likeliest of what was found that an owner can put right with what they have, and was not told to yet. */
export function mendingSuspected(input: Standing): Mending | undefined {
  const { folded, kase, walk } = input
  const told = [...folded.putRight.keys()].flatMap((of) => partsTold(input, of))
  const together = partsTogether(walk.step)
  return partsFound(walk.step)
    .flatMap((part): Mending[] => {
      if (told.includes(part)) return []
      const able = likelyModes(input, part).flatMap(({ id, mend, chance }) =>
        mend && chance >= worthTrying ? [{ id, ...mend }] : [],
      )
      const mend = able.find((each) => lacking(folded, each).length === 0)
      if (mend === undefined) return []
      const { id: fault, kit: _, ...rest } = mend
      const at = { of: part, parts: [part] }
      const also = together.includes(part) ? alikeOf(kase, { id: fault, part }, together) : []
      return [
        {
          ...rest,
          ...opensOf(input, { ...at, parts: [part, ...also] }, rest),
          ...at,
          ...(also.length > 0 && { also }),
          fault,
        },
      ]
    })
    .at(0)
}

/** What they are told to put right at this moment of the call. */
export function mendingNow(input: Standing): Mending | undefined {
  const { job, folded } = input
  const isOver =
    onTheWay(job) !== undefined || folded.repairs.some(({ outcome }) => outcome !== 'still there')
  if (isOver) return undefined
  return mendingSeen(input) ?? (askedNow(input) === null ? mendingSuspected(input) : undefined)
}

/** How it was to be done, as it was said to them; nothing where the knowledge has it no more. */
export function wordsOfMending(
  { kase, judged }: Pick<Standing, 'kase' | 'judged'>,
  { of, fault }: Pick<Mending, 'of' | 'fault'>,
): readonly string[] {
  return [mendTold({ kase, judged }, { of, fault })?.phone ?? []].flat()
}

/** In the middle of what they may be: of a check, or of putting something right, and what that may have opened. */
export function midway(input: Standing): {
  readonly asked: string | null
  readonly stands: AsItStands
} {
  const mending = mendingNow(input)
  return mending
    ? { asked: null, stands: perhapsOpened(input.asItStands, mending) }
    : { asked: askedNow(input), stands: input.asItStands }
}

type Opening = Pick<Mending, 'undoes' | 'opens' | 'stays'>

/** What it puts back once it is done, and what may be open where it is left half done. */
export const halfOf = ({ undoes, opens, stays }: Opening): HalfDone => ({
  ...(undoes && { undoes }),
  ...(opens && { opens }),
  ...(stays && { opens: [...(opens ?? []), ...stays], stays }),
})

/** What was told to be put right puts back and opens: as the answer to a check, or for the failure of a part, says. */
export function openingOf(
  input: Standing,
  { of, fault, also = [] }: Pick<Mending, 'of' | 'fault' | 'also'>,
): Opening {
  const told = mendTold(input, { of, fault })
  if (told === undefined) return {}
  const part = input.kase.faults.get(fault ?? '')?.part
  const parts = 'parts' in told ? told.parts : part === undefined ? [] : [part, ...also]
  return { ...told, ...opensOf(input, { of, parts }, told) }
}

/** Its own words open something, and a cover may come off for it. */
function opensOf(
  input: Standing,
  at: { readonly of: string; readonly parts: readonly string[] },
  { opens = [] }: Opening,
): Pick<Opening, 'opens'> {
  const all = liesCovered(input, at) ? [...opens, coversOff] : opens
  return all.length > 0 ? { opens: all } : {}
}

/** How it is put right: as the answer to a check told, or for the failure of a part. */
const mendTold = (
  { kase, judged }: Pick<Standing, 'kase' | 'judged'>,
  { of, fault }: { readonly of: string; readonly fault?: string | undefined },
) => (fault === undefined ? mendOf({ kase, judged }, of) : kase.faults.get(fault)?.mend)
