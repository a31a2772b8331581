import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { happens, pick, seedOf } from '../../server/practice/world/chance.ts'
import { seeded } from '../bench/random.ts'
import { aboutOf, type CheckHere } from './check.ts'
import { incidents, type Looked } from './incidents.ts'
import { observationOf } from './observations/index.ts'
import type { CheckOnPage } from './page.ts'
import type { Incident } from './record.ts'
import { barred, type Seen } from './seen.ts'
import { setupDoes, setupIn } from './words/setups.ts'
import { stepsDo } from './words/steps.ts'
import type { Where } from './words/where.ts'
import type { Site } from './world/site.ts'
import { allTogether, type Standing } from './world/standing.ts'
import { outputsOf, type World } from './world/world.ts'

/** The machine as the person has it now. */
export interface Bench {
  readonly world: World
  readonly standing: Standing
  readonly clock: number
}

/** What came of one check: what was seen, how the machine stands afterwards, and what the page brought about. */
export interface Made {
  readonly seen: Seen
  readonly standing: Standing
  readonly incidents: readonly Incident[]
}

/**
 * Makes a check as its page says: set-ups above the steps, then the steps, then the look, then what the steps put
 * back. The same is done on a machine that is all together, to see what the page has spoilt.
 *
 * @param take how often it has been made, from 1: what slips, slips otherwise each time
 */
export function make(
  knowledge: Knowledge,
  kase: Case,
  bench: Bench,
  page: CheckOnPage,
  take: number,
  careful = false,
): Made {
  const card = kase.checks.get(page.id)!
  const asLeft = { ...bench, standing: { ...bench.standing, couldNotRun: false } }
  const ready = withSetups(asLeft, page.setups, knowledge, card)
  const now = look(knowledge, { ...bench, standing: ready }, page, card, take, careful)
  const meant = (order: 'as printed' | 'hot first') =>
    look(knowledge, asMeant(knowledge, bench, card, order), page, card, take, careful)
  const barsItself = isBarred(now.seen) && isBarred(meant('as printed').seen)
  return {
    seen: now.seen,
    standing: now.standing,
    incidents: incidents(page, card, now, meant('hot first'), barsItself),
  }
}

const isBarred = (seen: Seen) => seen.kind === 'nothing' && seen.barred

/** All together, but for what this check itself asks for. Run hot first, then taken apart, is what it must mean. */
function asMeant(
  knowledge: Knowledge,
  bench: Bench,
  card: CheckCard,
  order: 'as printed' | 'hot first',
): Bench {
  const { setups } = card
  const isHot = ({ id }: { id: string }) => id === 'run-until-hot'
  const inOrder = [...setups.filter(isHot), ...setups.filter((setup) => !isHot(setup))]
  const says = (order === 'hot first' ? inOrder : setups).map((setup) => setup.do)
  // Nothing puts heat back: the form asks how warm the part is.
  const { hotAt } = bench.standing
  const together = { ...bench, standing: { ...allTogether(outputsOf(bench.world)), hotAt } }
  return { ...bench, standing: withSetups(together, says, knowledge, card) }
}

function withSetups(
  bench: Bench,
  printed: readonly string[],
  knowledge: Knowledge,
  card: CheckCard,
): Standing {
  return printed.reduce((standing, sentence) => {
    // Whoever finds that it cannot be run hot goes no further down the page.
    if (standing.couldNotRun) return standing
    const where = whereOf({ ...bench, standing }, card)
    return setupDoes(sentence, knowledge, where)(standing)
  }, bench.standing)
}

function look(
  knowledge: Knowledge,
  bench: Bench,
  page: CheckOnPage,
  card: CheckCard,
  take: number,
  careful: boolean,
): Looked {
  if (bench.standing.couldNotRun) {
    const seen = barred('it cannot be run hot as it stands')
    return { seen, standing: bench.standing, before: bench.standing }
  }
  const where = whereOf(bench, card)
  const steps = stepsDo(page.steps, where, (step) => setupIn(step, knowledge, where))
  const before = steps.before(bench.standing)
  const { world, clock } = bench
  const random = seeded(seedOf(world.seed, card.id, take))
  const site: Site = { world, standing: before, clock, random, doing: {} }
  const check: CheckHere = {
    site,
    card,
    ...aboutOf(card, site),
    words: page.steps.join(' '),
    slip: careful ? 'none' : slipOf(world, card, take),
  }
  const seen = overlooked(check, page, observationOf(check.kind)(check), take)
  return { seen, standing: steps.after(before), before }
}

function whereOf({ world, standing, clock }: Bench, card: CheckCard): Where {
  const site: Site = { world, standing, clock, random: seeded(world.seed), doing: {} }
  const { part, output } = aboutOf(card, site)
  return { site, part, output, plug: card.spot?.connector?.id }
}

function slipOf({ seed, person }: World, card: CheckCard, take: number): CheckHere['slip'] {
  const random = seeded(seedOf(seed, card.id, take, 'slip'))
  if (card.measurand === undefined || !happens(random, person.slips)) return 'none'
  return pick(random, ['other pin', 'thousand'] as const)
}

/** A look or a listening that comes out wrong. An owner's answer has its own doubts. */
function overlooked(
  { kind, card, site }: CheckHere,
  page: CheckOnPage,
  seen: Seen,
  take: number,
): Seen {
  const random = seeded(seedOf(site.world.seed, card.id, take, 'miss'))
  const isMissed = happens(random, site.world.person.misses)
  if (seen.kind !== 'answer' || kind.startsWith('ask-') || !isMissed) return seen
  const others = page.form.answers.filter((id) => id !== seen.id && id !== 'could-not-tell')
  return others.length > 0 ? { kind: 'answer', id: pick(random, others) } : seen
}
