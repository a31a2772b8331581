import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { seeded } from '../bench/random.ts'
import { aboutOf, type CheckHere } from './check.ts'
import { observationOf } from './observations/index.ts'
import type { CheckOnPage } from './page.ts'
import type { Incident } from './record.ts'
import { differ, type Seen, seenInWords } from './seen.ts'
import { setupDoes } from './words/setups.ts'
import { stepsDo } from './words/steps.ts'
import type { Where } from './words/where.ts'
import { happens, pick, seedOf } from './world/chance.ts'
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
  const ready = withSetups(bench, page.setups, knowledge, card)
  const { seen, standing, before } = look({ ...bench, standing: ready }, page, card, take, careful)
  const fresh = asMeant(knowledge, bench, card)
  const meant = look(fresh, page, card, take, careful)
  return { seen, standing, incidents: incidents(page, card, seen, meant, before) }
}

/** All together, but for what this check itself asks for. */
function asMeant(knowledge: Knowledge, bench: Bench, card: CheckCard): Bench {
  const together = allTogether(outputsOf(bench.world))
  const setups = card.setups.map(({ do: says }) => says)
  return {
    ...bench,
    standing: withSetups({ ...bench, standing: together }, setups, knowledge, card),
  }
}

function withSetups(
  bench: Bench,
  printed: readonly string[],
  knowledge: Knowledge,
  card: CheckCard,
): Standing {
  return printed.reduce((standing, sentence) => {
    const where = whereOf({ ...bench, standing }, card)
    return setupDoes(sentence, knowledge, where)(standing)
  }, bench.standing)
}

interface Looked {
  readonly seen: Seen
  readonly standing: Standing
  /** How the machine stood at the moment of the look. */
  readonly before: Standing
}

function look(
  bench: Bench,
  page: CheckOnPage,
  card: CheckCard,
  take: number,
  careful: boolean,
): Looked {
  const steps = stepsDo(page.steps, whereOf(bench, card))
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

function incidents(
  { title, words }: CheckOnPage,
  card: CheckCard,
  seen: Seen,
  meant: Looked,
  standing: Standing,
): Incident[] {
  const at = (kind: Incident['kind'], says: string): Incident => ({
    kind,
    check: card.id,
    says: `“${title}”: ${says}`,
  })
  if (seen.kind === 'nothing' && seen.barred) {
    return meant.seen.kind === 'nothing' ? [] : [at('barred', seen.why)]
  }
  const turns = card.engine !== 'stopped' && seen.kind !== 'nothing'
  const off = standing.apart.has('stop-plug') && !/stop wire is unplugged|stop circuit/i.test(words)
  const needless = [...standing.apart].filter(
    (plug) => !meant.before.apart.has(plug) && plug !== 'stop-plug',
  )
  return [
    ...(differ(seen, meant.seen)
      ? [
          at(
            'spoilt',
            `read ${seenInWords(seen)}, all together ${seenInWords(meant.seen)}; ${changed(standing, meant.before)}`,
          ),
        ]
      : []),
    ...(turns && off ? [at('stop wire off', `engine ${card.engine}, stop wire apart`)] : []),
    ...(turns && needless.length > 0
      ? [at('plug apart', `${card.engine} with ${needless.join(', ')} apart`)]
      : []),
  ]
}

/** What stands otherwise than the check means it to. */
function changed(now: Standing, meant: Standing): string {
  const more = (a: ReadonlySet<string>, b: ReadonlySet<string>) =>
    [...a].filter((each) => !b.has(each))
  const fields = ['apart', 'off', 'leadOff', 'capOff', 'newPlug', 'swapped', 'standIns'] as const
  const sets = fields.flatMap((field) =>
    more(now[field], meant[field]).map((name) => `${field === 'apart' ? '' : `${field} `}${name}`),
  )
  const rest = Object.keys(now).filter((key) => {
    const field = key as keyof Standing
    return (
      !(fields as readonly string[]).includes(key) &&
      JSON.stringify(now[field]) !== JSON.stringify(meant[field])
    )
  })
  return `left otherwise: ${[...sets, ...rest].join(', ') || 'nothing'}`
}
