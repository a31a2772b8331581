import { hindrance } from '../../jobs/words/hindrance.ts'
import { minutes, upperFirst } from '../../jobs/words/sentences.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { conditionsOf } from '../round/as-job.ts'
import type { RoundStanding } from '../round/standing.ts'
import { checkHref } from './hrefs.ts'
import { meterFor } from './meter.ts'
import { minutesToMake, minutesToReach, minutesToWait } from './minutes.ts'
import type { CheckGroup } from './views.ts'

/** Every check that can be made: by the part they are about; then what is asked, then what is about no one part. */
export function groupsOf(standing: RoundStanding): CheckGroup[] {
  const { round, hidden, kase, made } = standing
  const conditions = conditionsOf(hidden)
  const done = new Set(made.map(({ card }) => card.id))
  const judging = meterFor(standing)
  const names = [asked, several, ...[...kase.parts.values()].map(({ name }) => upperFirst(name))]
  const groups = new Map<string, CheckGroup['checks'][0][]>(names.map((name) => [name, []]))
  for (const card of kase.checks.values()) {
    if (hindrance(card, conditions, hidden.knowledge.owner) !== null) continue
    const all = minutes(
      minutesToMake(standing, card) +
        minutesToReach(standing, card) +
        minutesToWait(standing, card),
    )
    const { cannot } = judging(card)
    groups.get(nameOf(standing, card))?.push({
      href: checkHref(round.id, card.id),
      title: upperFirst(card.title),
      says: `${all}${done.has(card.id) ? ', made already' : ''}`,
      ...(cannot !== undefined && { cannot }),
    })
  }
  return [...groups]
    .filter(([, checks]) => checks.length > 0)
    .map(([name, checks]) => ({ name, checks }))
}

const asked = 'Asking the owner'
const several = 'Several parts at once'

function nameOf({ kase }: RoundStanding, card: CheckCard): string {
  const part = card.part === undefined ? undefined : kase.parts.get(card.part)
  if (part !== undefined) return upperFirst(part.name)
  return card.asked ? asked : several
}
