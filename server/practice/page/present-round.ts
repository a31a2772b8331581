import { presentSuspects } from '../../jobs/beside/suspects.ts'
import { cautionsEverywhere, cautionsView } from '../../jobs/words/cautions/cautions.ts'
import { degrees, minutes, sentence, upperFirst } from '../../jobs/words/sentences.ts'
import type { Case } from '../../knowledge/case.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import { printValue } from '../../measure/reading/print.ts'
import { conditionsOf, leadsRead } from '../round/as-job.ts'
import { knownAfter } from '../round/belief.ts'
import type { Fitted, RoundStanding } from '../round/standing.ts'
import { minutesBack } from '../round/waits.ts'
import { hinderedWords } from './barred.ts'
import { fittedWords } from './between.ts'
import { groupsOf } from './groups.ts'
import { handOutHref, roundHref } from './hrefs.ts'
import { presentPracticeCheck } from './present-check.ts'
import type { LastView, RoundPage } from './views.ts'
import { backWords, leftWords, seenWords, spentWords, titled } from './words.ts'

/** What somebody asked to see of a round, or sent and could not be taken. */
export interface AskedOfRound {
  readonly check: string
  readonly notice?: string
  /** What had been chosen in a form that could not be taken. */
  readonly chosen?: { readonly part: string; readonly pull: string }
}

/** A round: the complaint, every check there is, and what came of those that were made. */
export function presentRound(
  standing: RoundStanding,
  { check, notice, chosen }: AskedOfRound,
): RoundPage {
  const { round, hidden, kase, knowledge, made, setups, fitted } = standing
  const { machine, complaint } = kase
  const card = kase.checks.get(check)
  const renewed = fitted.map(({ part }) => part)
  const last = made.at(-1)
  const href = roundHref(round.id)
  return {
    title: `Practice ${round.id}`,
    notices: cautionsView(cautionsEverywhere({ knowledge })),
    ...{ id: round.id, version: round.version, href },
    heading: `${machineName(machine)}: ${complaint.title}`,
    owner: complaint.owner,
    facts: factsOf(standing),
    ...(notice !== undefined && { notice }),
    ...(last && { last: lastView(kase, last) }),
    ...(fitted.length > 0 && { bought: boughtWords(standing, fitted) }),
    ...(card && { check: presentPracticeCheck(standing, card, chosen?.pull) }),
    groups: groupsOf(standing),
    stands: setups
      .toReversed()
      .flatMap((setup) =>
        setup.undo
          ? [{ setup: setup.id, says: backWords(setup), minutes: minutes(setup.undo.minutes) }]
          : [],
      ),
    readings: readingsOf(standing),
    ...(setups.length > 0 && { putTogether: togetherWords(standing) }),
    ...(standing.askedLast && {
      suspects: presentSuspects({
        kase,
        walk: { suspects: knownAfter(hidden, made, renewed).suspects },
      }),
    }),
    parts: [...kase.parts.values()]
      .filter(({ id }) => !fitted.some(({ part }) => part === id))
      .map(({ id, name }) => ({ id, name: upperFirst(name), chosen: id === chosen?.part })),
    handOut: {
      href: handOutHref(round.opened),
      says: `Everybody who begins with the seed ${round.opened.seed} here gets this machine.`,
    },
  }
}

function factsOf({
  hidden,
  minutes: spent,
  waited,
  asked,
  round,
}: RoundStanding): RoundPage['facts'] {
  const { air } = conditionsOf(hidden)
  const { meter, knowledge } = hidden
  const name = knowledge.meters.get(meter.id)?.name ?? meter.id
  return [
    { label: 'Minutes so far', value: spentWords(spent, waited) },
    { label: 'Air', value: degrees(air) },
    { label: 'Place', value: 'At the bench, with every tool on the list' },
    {
      label: 'Meter',
      value: `${name}; its leads alone show ${printValue(leadsRead(hidden), 'Ω')}, which is in every reading of ohms`,
    },
    ...(asked > 0 ? [{ label: 'Tool asked', value: asked === 1 ? 'Once' : `${asked} times` }] : []),
    ...(round.opened.who === '' ? [] : [{ label: 'Who', value: round.opened.who }]),
  ]
}

/** Every reading, and between them the parts that were bought in vain. */
function readingsOf({ kase, made, fitted }: RoundStanding): readonly string[] {
  const boughtAfter = (checks: number) =>
    fitted.filter(({ after }) => after === checks).map((each) => fittedWords(kase, each))
  return [
    ...boughtAfter(0),
    ...made.flatMap((each, i) => {
      const left = leftWords(kase, each)
      const shown = seenWords(each.card, each.seen)
      const says = left === '' ? shown : `${shown}, ${left}`
      return [titled(upperFirst(each.card.title), says), ...boughtAfter(i + 1)]
    }),
  ]
}

function lastView(kase: Case, made: RoundStanding['made'][0]): LastView {
  const { card, seen } = made
  const left = leftWords(kase, made)
  return {
    title: upperFirst(card.title),
    shown: seenWords(card, seen),
    ...(seen.kind === 'barred' && { hindered: hinderedWords(kase, made) }),
    ...(left !== '' && {
      spoilt: sentence(`It was made ${left}, so it says nothing of what it asks`),
    }),
  }
}

/** "The igniter is new, and the complaint is still there." */
function boughtWords({ kase }: RoundStanding, fitted: readonly Fitted[]): string {
  const name = (part: string) => kase.parts.get(part)?.name ?? part
  const [last] = fitted.slice(-1)
  if (last === undefined || last.right) return ''
  const still = 'all is together again, and the complaint is still there'
  const work = `${minutes(last.minutes)} of work`
  return sentence(
    last.price > 0
      ? `The ${name(last.part)} is new, ${still}: it was a good one, for ${last.price}, with ${work}`
      : `The ${name(last.part)} has been seen to, ${still}: nothing was wrong there, and it was ${work}`,
  )
}

/** Nobody sees whether a new part was it before all is together. */
function togetherWords(standing: RoundStanding): string {
  const back = minutesBack(standing.knowledge, standing.setups, standing)
  return `All that is apart, off or fitted is put back first, ${spentWords(back.minutes, back.waited)}.`
}
