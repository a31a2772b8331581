import { numbered } from '../../../diagnosis/model/named.ts'
import type { Case } from '../../../knowledge/case.ts'
import { hasAll } from '../../../knowledge/fits.ts'
import { fillAll, fillingsOf } from '../../../knowledge/instantiate/words.ts'
import type { Knowledge } from '../../../knowledge/knowledge.ts'
import { answerGiven } from '../../record/answer-given.ts'
import type { Standing } from '../../standing/standing.ts'
import { sentence } from '../../words/sentences.ts'
import type { Way } from './way-steps.ts'

/** What must not be tried with this complaint, in the words of this machine. */
export function neverOf(
  { complaint, machine }: Pick<Case, 'complaint' | 'machine'>,
  { home }: Knowledge,
): string[] {
  const texts = complaint.home.never.flatMap((name) => home.never[name] ?? [])
  return fillAll(texts, fillingsOf(machine))
}

/** The ways of this complaint on this machine, by name, as its file has them. */
export function waysOf(
  { machine, complaint }: Pick<Case, 'machine' | 'complaint'>,
  { home }: Knowledge,
): [string, Way][] {
  return Object.keys(complaint.home.try).flatMap((id): [string, Way][] => {
    const way = home.ways[id]
    const fits = way && hasAll(machine, way.roles ?? []) && !(way.onLand && machine.afloat)
    return fits ? [[id, way]] : []
  })
}

/** Below this chance that its cause is there, a way that would cure it is not tried. */
const noLonger = 0.005

/** The same, where it leaves the machine with something apart, such as its stop wire. */
const hardlyWorthIt = 0.02

/** From this chance on a way is not tried for what speaks against it. From memory. */
const tooLikely = 0.5

/** The same, but for those that cannot help any more; the one first that gets around what is likeliest now. */
export function waysHome({
  kase,
  knowledge,
  walk,
  folded,
}: Pick<Standing, 'kase' | 'knowledge' | 'walk'> & Partial<Pick<Standing, 'folded'>>): [
  string,
  Way,
][] {
  const isUsedUp = (id: string, { usesUp, kit = [] }: Way) => {
    const came = folded?.tried.get(id)
    const isTried = came !== undefined && came !== 'broken off'
    const isIn = kit.length > 0 && folded !== undefined && isPutIn(kase, folded, kit)
    return usesUp === true && (isTried || isIn)
  }
  const inVain = new Set(
    [...(folded?.readings ?? [])].flatMap(([check, { touches }]) => {
      return answerGiven(kase.checks.get(check), touches)?.inVain ?? []
    }),
  )
  const worth = (around: readonly string[]) =>
    kase.model.cutSets.reduce(
      (sum, { faults }, c) =>
        faults.some((fault) => around.includes(fault)) ? sum + numbered(walk.belief, c) : sum,
      0,
    )
  return (
    waysOf(kase, knowledge)
      .map(([id, way]) => ({ id, way, worth: worth(kase.ways.get(id) ?? []) }))
      .toSorted((a, b) => b.worth - a.worth)
      // What is not so any more has no way around it.
      .filter(({ way: { works, leaves }, worth }) => {
        return works === undefined || worth > (leaves ? hardlyWorthIt : noLonger)
      })
      .filter(({ id }) => worth(kase.noWays.get(id) ?? []) < tooLikely)
      .filter(({ id, way }) => !isUsedUp(id, way) && !inVain.has(id))
      .map(({ id, way }) => [id, way])
  )
}

/** Whether what was put right took all of this. */
const isPutIn = ({ faults }: Case, { cured }: Standing['folded'], kit: readonly string[]) =>
  cured.some((fault) => kit.every((thing) => faults.get(fault)?.mend?.kit.includes(thing)))

/** What it costs, on land or on the water: a boat on land goes there with it. */
export function dangerOf({ danger, afloat }: Way, { machine }: Pick<Case, 'machine'>): string {
  return sentence((machine.afloat && afloat) || danger)
}
