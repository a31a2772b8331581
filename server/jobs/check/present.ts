import type { CheckCard, Measurand } from '../../knowledge/case.ts'
import { unplugId } from '../../knowledge/instantiate/setup-cards.ts'
import { assumedForLimits } from '../../measure/correct/temperature.ts'
import { temperatureOf, usualWarmth } from '../measuring/warmth.ts'
import type { Asked } from '../standing/asked.ts'
import { barredBy, barringsOf } from '../standing/barred.ts'
import type { Standing } from '../standing/standing.ts'
import { conditionsAt } from '../standing/way/still-hot.ts'
import { type Way, wayTo } from '../standing/way/way-to.ts'
import { cautionsOfTheJob, presentCautions } from '../words/cautions/cautions.ts'
import { cautionsOf } from '../words/cautions/renewed.ts'
import type { Fact } from '../words/fact.ts'
import { limitsNow, limitsWords } from '../words/limits-now.ts'
import { degrees, listed, lowerFirst, sentence, titleOf, upperFirst } from '../words/sentences.ts'
import { type Purpose, presentForm } from './form.ts'
import { whyFurtherTake } from './further-take.ts'
import { presentCheckMeter } from './meter.ts'
import { presentRival } from './rival.ts'
import { presentSpot } from './spot.ts'
import type { CheckView } from './view.ts'
import { presentSteps, time } from './way.ts'

/** How a check comes to stand on the page. */
interface OnPage {
  readonly proposed: boolean
  readonly taking: Purpose
}

/** The check that stands on the page: proposed, chosen, or being corrected. */
export function presentCheck(
  input: Standing & Asked,
  card: CheckCard,
  { proposed, taking }: OnPage,
): CheckView {
  const { job, kase, knowledge } = input
  const correcting = taking === 'correction'
  const way = correcting ? noWay : wayTo(input.asItStands, card)
  const barred = correcting ? null : barredBy(barringsOf(kase, input.folded), card)
  const spot =
    card.spot &&
    presentSpot(card.spot, knowledge.colours, {
      looked: card.meter === undefined && card.spot.connector === undefined,
      isApart: isReadApart(card),
      loose: card.loose,
    })
  return {
    id: card.id,
    title: titleOf(card.title, taking === 'take'),
    standing: standing(taking, proposed),
    cautions: presentCautions(input, [...cautionsOf(input, card), ...cautionsOfTheJob(input)]),
    ...(barred !== null && { barred: sentence(barred) }),
    steps: presentSteps(
      way,
      taking === 'take' ? withMoreCare(card) : card,
      kase.machine,
      correcting ? 'How it was made' : 'Do this',
    ),
    ...(card.measurand && {
      limits: {
        verb: card.measurand.quantity.goodOne,
        says: limitsWords(card.measurand),
        ...limitsHere(input, card, card.measurand),
        at: limitsAtWords(card.measurand),
        source: card.measurand.limitsSource,
      },
      meter: presentCheckMeter(input, card, card.measurand),
    }),
    ...(card.meter && { setting: card.meter }),
    terms: terms(card, way),
    ...(spot && { spot }),
    why: [
      ...(taking === 'take'
        ? [whyFurtherTake(input, card)]
        : [sentence(card.why), card.teach ?? '']),
      correcting ? '' : presentRival(input, card.id),
    ].filter(Boolean),
    form: presentForm(input, card, taking),
    ...(!proposed && !correcting && { backHref: `/jobs/${job.id}` }),
  }
}

/** What the meter shows of a good one as warm as the part is now, where that is not what the sheet says. */
function limitsHere(
  { folded, asItStands }: Standing,
  card: CheckCard,
  measurand: Measurand,
): { now?: string } {
  const conditions = conditionsAt(asItStands, card, folded.conditions)
  const { celsius } = temperatureOf(usualWarmth(conditions, measurand), conditions)
  const now = limitsNow(measurand, celsius)
  return now === undefined ? {} : { now: `${now} at ${degrees(celsius)}` }
}

/** Whether the connector that a check is made at is apart for it, or there is none. */
export function isReadApart({ spot, setups, loose }: CheckCard): boolean {
  const connector = spot?.connector?.id
  return (
    loose === true || connector === undefined || setups.some(({ id }) => id === unplugId(connector))
  )
}

/** Made in the very same way, it would come out the same. */
function withMoreCare(card: CheckCard): CheckCard {
  const anew = card.measurand?.quantity.touches.askAgain
  return anew === undefined
    ? card
    : { ...card, do: [`With more care this time: ${lowerFirst(anew)}`, ...card.do] }
}

function standing(taking: Purpose, proposed: boolean): string {
  if (taking === 'correction') return 'Correct this reading'
  if (taking === 'take') return 'One more take, to be sure'
  return proposed ? 'Check to make now' : 'Your choice'
}

/** What was written down is put right at the desk, and nobody goes to the machine for it. */
const noWay: Way = { putBack: [], make: [], keep: [], still: [] }

const engineWords: Readonly<Record<CheckCard['engine'], string>> = {
  stopped: 'Stopped',
  cranking: 'Cranked',
  running: 'Running',
}

function terms(card: CheckCard, way: Way): Fact[] {
  return [
    { label: 'Engine', value: engineWords[card.engine] },
    {
      label: 'Tools',
      value: upperFirst(listed(card.tools.map(({ name }) => name))) || 'Hands and eyes',
    },
    { label: 'Time', value: time(card, way) },
  ]
}

/** At what temperature the limits hold; of anything but copper that is all one. */
function limitsAtWords({ at, material }: NonNullable<CheckCard['measurand']>): string {
  if (material === 'not copper') return ''
  if (at !== undefined) return `Limits hold at ${degrees(at)}.`
  const { celsius, halfWidth } = assumedForLimits
  return `The sheet names no temperature: taken as ${celsius} ± ${halfWidth}\u00a0°C.`
}
