import { isReadApart } from '../../jobs/check/present.ts'
import { presentSpot } from '../../jobs/check/spot.ts'
import { presentSteps } from '../../jobs/check/way.ts'
import { fold } from '../../jobs/record/fold.ts'
import { barredBy, barringsOf } from '../../jobs/standing/barred.ts'
import { wayTo } from '../../jobs/standing/way/way-to.ts'
import { cautionsOfTheJob, presentCautions } from '../../jobs/words/cautions/cautions.ts'
import { listed, minutes, sentence, upperFirst } from '../../jobs/words/sentences.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { asJob } from '../round/as-job.ts'
import type { RoundStanding } from '../round/standing.ts'
import { isPull, type Pull, pulls } from '../seen/making.ts'
import { limitsOf } from './limits.ts'
import { meterFor } from './meter.ts'
import { minutesToMake, minutesToReach, minutesToWait } from './minutes.ts'
import type { PracticeCheckView } from './views.ts'
import { atTheBench, backWords } from './words.ts'

/** A check as a job's page has it, with a button that makes it instead of a field. */
export function presentPracticeCheck(
  standing: RoundStanding,
  card: CheckCard,
  pull = '',
): PracticeCheckView {
  const { hidden, kase, knowledge, made, setups } = standing
  const job = asJob(hidden, made)
  const folded = fold(job.events)
  const onJob = { job, folded, kase, knowledge }
  const way = wayTo({ setups, unsure: [], fading: [] }, card)
  const barred = barredBy(barringsOf(kase, folded), card)
  const { unfit } = meterFor(standing)(card)
  const times = made.filter((each) => each.card.id === card.id)
  return {
    id: card.id,
    title: upperFirst(card.title),
    cautions: presentCautions(onJob, [...card.cautions, ...cautionsOfTheJob(onJob)]),
    ...(barred !== null && { barred: sentence(barred) }),
    ...(card.measurand && { limits: limitsOf(hidden, card.measurand) }),
    ...(card.meter && { setting: atTheBench(card.meter) }),
    ...(unfit && { unfit }),
    ...(card.spot && {
      spot: presentSpot(card.spot, knowledge.colours, {
        looked: card.meter === undefined && card.spot.connector === undefined,
        isApart: isReadApart(card),
      }),
    }),
    steps: presentSteps(way, card, kase.machine).map((each) => ({
      ...each,
      steps: each.steps.map(atTheBench),
    })),
    ...(card.measurand && { entering: 'What a step says to enter, the bench enters by itself.' }),
    terms: [
      {
        label: 'Tools',
        value: upperFirst(listed(card.tools.map(({ name }) => name))) || 'Hands and eyes',
      },
      { label: 'Time', value: minutes(minutesToMake(standing, card)) },
      ...more('The owner has gone: to reach them', minutesToReach(standing, card)),
      ...more('Waiting', minutesToWait(standing, card)),
    ],
    putBack: way.putBack.map(({ setup }) => ({ setup: setup.id, says: backWords(setup) })),
    pulls: isPulled(card) ? pullChoices(isPull(pull) ? pull : (times.at(-1)?.pull ?? 'brisk')) : [],
    submit: times.every(({ seen }) => seen.kind === 'barred')
      ? 'Do it'
      : (card.measurand?.quantity.touches.another ?? 'Do it again'),
  }
}

const more = (label: string, count: number): PracticeCheckView['terms'] =>
  count === 0 ? [] : [{ label, value: `${minutes(count)} more` }]

/** Its volts follow how fast somebody pulls; where a starter turns it, nobody does. */
const isPulled = ({ engine, measurand }: CheckCard): boolean =>
  engine === 'cranking' && measurand?.quantity.corrections.includes('speed') === true

const pullWords: Readonly<Record<Pull, string>> = {
  slow: 'Slowly',
  brisk: 'Briskly',
  hard: 'As hard as you can',
}

const pullChoices = (chosen: Pull): PracticeCheckView['pulls'] =>
  (Object.keys(pulls) as Pull[]).map((value) => ({
    value,
    says: pullWords[value],
    chosen: value === chosen,
  }))
