import { named } from '../../diagnosis/model/named.ts'
import type { Fact } from '../../jobs/words/fact.ts'
import { partNames, suspectName } from '../../jobs/words/names.ts'
import { minutes, percent, sentence, the, upperFirst } from '../../jobs/words/sentences.ts'
import type { Case } from '../../knowledge/case.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import { handOutHref, learnHref, progressHref } from '../page/hrefs.ts'
import { spentWords } from '../page/words.ts'
import type { RoundStanding } from '../round/standing.ts'
import { worthOf } from '../tool/compare.ts'
import { sharesOf } from '../tool/difference.ts'
import { hasLooked, isCounted, resultOf } from '../tool/result.ts'
import type { ToolWalk } from '../tool/walk.ts'
import { differenceWords } from './difference.ts'
import { type OrderView, ownOrder, toolOrder } from './steps.ts'

/** The page of a round that is over. */
export interface AfterPage {
  readonly title: string
  readonly heading: string
  /** "Right", "Not right", and in a sentence why. */
  readonly stamp: string
  readonly says: string
  /** What was hidden, sentences. */
  readonly was: readonly string[]
  readonly facts: readonly Fact[]
  /** Where the difference in minutes came from, sentences. */
  readonly difference: readonly string[]
  readonly own: readonly OrderView[]
  readonly tool: readonly OrderView[]
  /** How the tool's walk ended. */
  readonly toolEnd: string
  readonly ways: readonly { readonly href: string; readonly text: string }[]
}

export function presentAfter(standing: RoundStanding, tool: ToolWalk): AfterPage {
  const { kase, round, hidden, minutes: spent, waited, asked, fitted } = standing
  const result = resultOf(standing, tool)
  const good = fitted.filter(({ right }) => !right)
  const price = good.reduce((sum, each) => sum + each.price, 0)
  const work = good.reduce((sum, each) => sum + each.minutes, 0)
  const worths = worthOf(standing)
  return {
    title: `Practice ${round.id}, afterwards`,
    heading: `${machineName(kase.machine)}: ${kase.complaint.title}`,
    stamp: result.right ? 'Right' : isCounted(result) ? 'Not right' : 'Not counted',
    says: endWords(standing, tool),
    was: hidden.faults.map((fault) => {
      const { part, says } = named(kase.faults, fault)
      return sentence(upperFirst(`${the(named(kase.parts, part).name)} ${says}`))
    }),
    facts: [
      { label: 'Your minutes', value: spentWords(spent, waited) },
      { label: 'The tool’s minutes', value: spentWords(tool.minutes, waitedBy(tool)) },
      { label: 'Your checks', value: String(standing.made.length) },
      { label: 'The tool’s checks', value: String(tool.steps.length) },
      {
        label: 'Good parts bought',
        value:
          good.length === 0
            ? 'None'
            : `${upperFirst(
                partNames(
                  kase,
                  good.map(({ part }) => part),
                ),
              )}: ${price} in all, and ${minutes(work)} of your minutes`,
      },
      {
        label: 'Tool asked',
        value: asked === 0 ? 'Never' : asked === 1 ? 'Once' : `${asked} times`,
      },
      { label: 'Seed', value: round.opened.seed },
      ...(round.opened.who === '' ? [] : [{ label: 'Who', value: round.opened.who }]),
    ],
    difference: tool.right
      ? differenceWords(spent, tool.minutes, sharesOf(standing, worths, tool))
      : [
          `The tool did not find it in its ${minutes(tool.minutes)}, so they are no measure of yours.`,
        ],
    own: ownOrder(standing, worths),
    tool: toolOrder(hidden, tool),
    toolEnd: toolEndWords(kase, tool),
    ways: [
      { href: '/practice', text: 'Begin another round' },
      { href: learnHref(kase.complaint.id, kase.machine.id), text: 'Learn the order' },
      { href: handOutHref(round.opened), text: 'Hand this machine out' },
      { href: progressHref(round.opened.who), text: 'How it goes so far' },
    ],
  }
}

function endWords({ end, fitted, kase, minutes: spent }: RoundStanding, tool: ToolWalk): string {
  const good = fitted.filter(({ right }) => !right).map(({ part }) => part)
  if (end === 'cannot tell') {
    if (good.length > 0) {
      return sentence(
        `You bought ${partNames(kase, good)}, which ${were(good)} good, and then could not tell`,
      )
    }
    if (tool.right) return 'You could not tell. The tool named the part, as stands below.'
    if (tool.end.kind === 'named')
      return 'You could not tell. The tool thought that it could, and named a good part, as stands below.'
    return hasLooked(spent, tool)
      ? 'You could not tell, and neither could the tool.'
      : 'You stopped before anybody could know. In the end the tool could not tell either, as stands below.'
  }
  return good.length === 0
    ? 'You named the part that had failed.'
    : sentence(
        `You found it, after you had bought ${partNames(kase, good)}, which ${were(good)} good`,
      )
}

const waitedBy = ({ steps, together }: ToolWalk): number =>
  steps.reduce((sum, { waited }) => sum + waited, together.waited)

const were = (parts: readonly string[]): string => (parts.length === 1 ? 'was' : 'were')

function toolEndWords(kase: Case, { end, right }: ToolWalk): string {
  switch (end.kind) {
    case 'named': {
      const names = `It names ${partNames(kase, end.parts)}, at ${percent(end.probability)}`
      return sentence(right ? names : `${names}, and is wrong: that is not what had failed`)
    }
    case 'cannotSeparate': {
      const group = end.group.map(({ part }) => suspectName(kase, part))
      return sentence(`It cannot tell these apart: ${group.join('; ')}`)
    }
    case 'outsideThisTree':
      return 'It finds none of the causes that are listed.'
    case 'contradiction':
      return 'It finds that the readings contradict each other.'
    case 'gaveUp':
      return 'It has asked long enough, and gives up.'
  }
}
