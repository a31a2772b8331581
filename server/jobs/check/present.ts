import type { Prospect } from '../../diagnosis/model/walk.ts'
import type { CautionCard, CheckCard, SetupCard } from '../../knowledge/case.ts'
import { assumedForLimits } from '../../measure/correct/temperature.ts'
import { printLimits } from '../../measure/reading/print.ts'
import type { Asked } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { byGravity, shownCautions } from '../words/cautions.ts'
import type { Fact } from '../words/fact.ts'
import { degrees, listed, minutes, sentence, upperFirst } from '../words/sentences.ts'
import { presentForm, type Taking } from './form.ts'
import { presentCheckInstrument } from './meter.ts'
import { whyOnceMore } from './once-more.ts'
import { presentProspects } from './prospects.ts'
import { presentRival } from './rival.ts'
import { presentSpot } from './spot.ts'
import type { CheckView } from './view.ts'

/** How a check comes to stand on the page, and what each of its answers would do. */
interface OnPage {
  readonly proposed: boolean
  readonly taking: Taking
  readonly foreseen: readonly Prospect[]
}

/** The check that stands on the page: proposed, chosen, or being corrected. */
export function presentCheck(
  input: Standing & Asked,
  card: CheckCard,
  { proposed, taking, foreseen }: OnPage,
): CheckView {
  const { job, kase, knowledge } = input
  const setups = taking === 'again' ? [] : setupsToMake(input, card)
  const correcting = taking === 'correction'
  const spot = card.spot && presentSpot(card.spot, knowledge.colours)
  return {
    id: card.id,
    title: upperFirst(card.title),
    standing: standing(taking, proposed),
    cautions: cautionsFor(input, card),
    setups: setups.map(({ do: says }) => sentence(says)),
    steps: card.do.map(sentence),
    stepsFrom: setups.length + 1,
    ...(card.measured && {
      limits: {
        says: limitsWords(card.measured),
        at: limitsAtWords(card.measured),
        source: card.measured.limitsSource,
      },
      instrument: presentCheckInstrument(input, card, card.measured),
    }),
    ...(card.meter && { meter: card.meter }),
    terms: terms(card, setups),
    ...(spot && { spot }),
    why: taking === 'again' ? whyOnceMore(input, card) : sentence(card.why),
    rival: correcting ? '' : presentRival(input, card.id),
    prospects: correcting ? [] : presentProspects(kase, card, foreseen),
    form: presentForm(input, card, taking),
    ...(!proposed && !correcting && { backHref: `/jobs/${job.id}` }),
  }
}

function standing(taking: Taking, proposed: boolean): string {
  if (taking === 'correction') return 'Correct this reading'
  if (taking === 'again') return 'Once more, to be sure'
  return proposed ? 'Check to make now' : 'Your choice'
}

/** Set-ups that no earlier reading has made already. */
function setupsToMake({ folded, kase }: Standing, card: CheckCard): readonly SetupCard[] {
  const answered = [...folded.readings.keys()].filter((check) => check !== card.id)
  const made = new Set(
    answered.flatMap((check) => kase.checks.get(check)?.setups.map(({ id }) => id) ?? []),
  )
  return card.setups.filter(({ id }) => !made.has(id))
}

function cautionsFor({ folded, knowledge }: Standing, card: CheckCard): CautionCard[] {
  const always = shownCautions(knowledge, folded.opened.conditions)
  const own = card.cautions.filter(({ id }) => !always.some((each) => each.id === id))
  return byGravity([...own, ...always])
}

const engineWords: Readonly<Record<CheckCard['engine'], string>> = {
  stopped: 'Stopped',
  cranking: 'Cranked by hand',
  running: 'Running',
}

function terms(card: CheckCard, setups: readonly SetupCard[]): Fact[] {
  return [
    { label: 'Engine', value: engineWords[card.engine] },
    {
      label: 'Tools',
      value: upperFirst(listed(card.tools.map(({ name }) => name))) || 'Hands and eyes',
    },
    { label: 'Time', value: time(card, setups) },
  ]
}

function limitsWords({ quantity, limits, rpm }: NonNullable<CheckCard['measured']>): string {
  const over = quantity.overRange === 'in range' ? ', or OL' : ''
  const speed = rpm === undefined ? '' : ` at ${rpm}\u00a0rpm`
  return `${printLimits(limits, quantity.unit)}${over}${speed}`
}

/** At what temperature the limits hold; of anything but copper that is all one. */
function limitsAtWords({ at, material }: NonNullable<CheckCard['measured']>): string {
  if (material !== 'copper') return ''
  if (at !== undefined) return `Limits hold at ${degrees(at)}.`
  const { celsius, halfWidth } = assumedForLimits
  return `The sheet names no temperature: taken as ${celsius} ± ${halfWidth}\u00a0°C.`
}

function time(card: CheckCard, setups: readonly SetupCard[]): string {
  const first = setups.reduce((sum, setup) => sum + setup.minutes, 0)
  const all = minutes(card.minutes + first)
  return first > 0 ? `${all}, ${minutes(first)} of it to get there` : all
}
