import type { CheckCard } from '../../knowledge/case.ts'
import { printLimits } from '../../measure/reading/print.ts'
import { presentForm, purposeOf } from '../check/form.ts'
import { isReadApart } from '../check/present.ts'
import { presentSpot } from '../check/spot.ts'
import { leftOver } from '../posts/left-over.ts'
import { presentLast } from '../readings/last.ts'
import { stands } from '../record/repairs.ts'
import { type Asked, sameCheck } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { ticketOf } from '../standing/ticket.ts'
import { takenBackAt } from '../verdict/repair.ts'
import { cautionsEverywhere, presentCautions } from '../words/cautions/cautions.ts'
import { limitsNow } from '../words/limits-now.ts'
import { counted, lowerFirst, sentence, titleOf, upperFirst } from '../words/sentences.ts'
import { noToolHere } from '../words/skip-reasons.ts'
import { askedNow } from './asked-now.ts'
import { cardHref } from './card-href.ts'
import { checkLines } from './check-lines.ts'
import { afterCutOff, cutOffAction } from './cut-off.ts'
import { presentEnding } from './ending.ts'
import { homeHref } from './home/home-href.ts'
import { onTheWay } from './home/on-the-way.ts'
import { mendingNow, mendingSeen } from './mending/mending.ts'
import { presentPutRight } from './mending/put-right.ts'
import { triedLast } from './mending/tried-last.ts'
import { presentRepaired } from './repaired.ts'
import { saying } from './saying.ts'
import { skippedLast } from './skipped-last.ts'
import { stopMidway } from './start/stop-first.ts'
import type { Line, PhoneCheck, PhoneDeed, PhonePage } from './view.ts'

/** A job's page while an owner is at the machine: what to say to them, and what they answer. */
export function presentPhone(input: Standing & Asked): PhonePage {
  const { job, kase, folded } = input
  const chosen = input.refused?.check ?? input.correcting ?? input.take ?? input.check
  const deed = chosen === undefined ? presentDeed(input) : undefined
  const isOver =
    deed !== undefined || onTheWay(job) !== undefined || folded.repairs.at(-1)?.outcome === 'gone'
  const onPage = chosen ?? (isOver ? null : askedNow(input))
  const card = kase.checks.get(onPage ?? '')
  const check = card && presentPhoneCheck(input, card)
  const above = leftOver(input, check ? { check } : {})
  const ending = check || deed ? undefined : presentEnding(input)
  const tried = triedLast(input)
  const last = presentLast(input)
  // Said once they ring, before the first sentence.
  const again = (input.line ?? 1) <= 1 ? afterCutOff(input) : undefined
  const title = check?.title ?? deed?.title ?? ending?.title ?? kase.complaint.title
  return {
    title: `Job ${job.id} by phone: ${lowerFirst(title)}`,
    job: ticketOf(job),
    head: [
      check
        ? `check ${folded.readings.size + 1}`
        : `after ${counted(folded.readings.size, 'check')}`,
      kase.machine.name,
      kase.complaint.title,
    ],
    said: above.notice ?? check?.form.problem ?? sentence(title),
    ...above,
    ...(again && { again }),
    ...(last && {
      last: {
        says: last.says,
        means: last.means,
        correctHref: last.correctHref,
        ...(last.again && { againHref: last.again.href }),
      },
    }),
    ...(tried && { triedLast: tried }),
    ...skippedLast(input, onPage),
    ...(check && { check }),
    ...(deed && { deed }),
    ...(ending && { ending }),
    ...(!check &&
      stands(folded.repairs.at(-1)) && {
        withdraw: {
          action: takenBackAt(input),
          says: 'They take that back: the repair counts no more',
        },
      }),
    ways: otherWays(
      input,
      check ? isBegun(check) : isUnderWay(deed ?? (ending?.leave && ending)),
    ).filter(({ href }) => !ending?.onwards.some((onward) => onward.href === href)),
    notices: presentCautions(input, cautionsEverywhere(input)),
  }
}

/** A check on the page may be begun, and so may the one that an answer is put right in the middle of. */
const isBegun = ({ saying, form }: PhoneCheck): boolean =>
  saying.at > 0 || form.corrects !== undefined

/** Something that is done, and then answered; a verdict is only read out. */
const isUnderWay = (deed: PhoneDeed | undefined): boolean =>
  deed !== undefined && deed.answers.length > 0 && deed.saying.at > 0

const otherWays = (input: Standing, begun: boolean): PhonePage['ways'] => [
  {
    href: homeHref(input.job, begun),
    text: 'Getting home',
  },
  { href: `/jobs/${input.job.id}/conditions?who=self`, text: 'Take it over at the bench' },
  { href: `/jobs/${input.job.id}/conditions`, text: 'They have something else' },
  { href: cardHref(input), text: 'The pocket card for this' },
  { href: `/jobs/${input.job.id}?whole=yes`, text: 'The whole work' },
]

/** What comes before the next check: what was repaired is to stay away, or what was seen is put right. */
function presentDeed(input: Standing & Asked): PhoneDeed | undefined {
  if (onTheWay(input.job) !== undefined) return undefined
  const repaired = presentRepaired(input)
  const mending = repaired ? undefined : mendingSeen(input)
  return repaired ?? (mending && presentPutRight(input, mending))
}

function presentPhoneCheck(input: Standing & Asked, card: CheckCard): PhoneCheck {
  const { job, folded, knowledge, refused, line = 1 } = input
  const purpose = purposeOf(input, card.id)
  const form = presentForm(input, card, purpose)
  const again = purpose === 'take'
  const isPutRight = purpose === 'correction'
  // The answers are to all of them, and only the last stands large.
  const questions = card.phone.filter((says) => says.endsWith('?'))
  // Nobody goes to the machine for what was misheard.
  const lines: Line[] = isPutRight
    ? [
        ...stopMidway(input, askedNow(input), mendingNow(input) !== undefined),
        { says: questions.join(' ') || card.asks, label: 'ask' },
      ]
    : checkLines(input, card, again)
  const { measurand } = card
  // What could not be taken stands at the answers again.
  const asked = refused?.check === card.id ? lines.length : line
  const said = saying(lines, asked, (number) => sameCheck(input, `line=${number}`))
  return {
    id: card.id,
    title: titleOf(card.title, again),
    saying: said,
    atOnce: lines[said.at]?.opens ? answersOf(card, ({ untouched }) => untouched === true) : [],
    keepsAnswer:
      !isPutRight && said.next !== undefined && lines.findIndex(isTheQuestion(card)) <= said.at,
    // Where "the other goes where I say" is, on no face of a plug.
    ...(card.spot &&
      (card.spot.connector || measurand) && {
        spot: presentSpot(card.spot, knowledge.colours, { isApart: isReadApart(card) }),
      }),
    ...(measurand && {
      good:
        limitsNow(measurand, folded.conditions.air) ??
        printLimits(measurand.limits, measurand.quantity.unit),
    }),
    why: sentence(card.why),
    form: {
      action: form.action,
      ...(form.field && { field: form.field }),
      typed: form.typed,
      ...(form.problem !== undefined && { problem: form.problem }),
      ...(form.kept !== undefined && { kept: form.kept }),
      asks: questions.join(' ') || card.asks,
      heard: isPutRight || (questions.length <= 1 && lines.at(-1)?.says === card.asks),
      answers: answersOf(card),
      ...(form.corrects && { corrects: form.corrects }),
      skip: {
        action: form.letStand?.action ?? `/jobs/${job.id}/skips`,
        reasons: again ? [] : ownersReasons,
        begun: lines.slice(0, said.at).some(isDone) ? 'yes' : 'no',
      },
      cutOff: cutOffAction(job),
    },
  }
}

type Answer = NonNullable<CheckCard['answers']>[number]

const answersOf = (
  { answers = [] }: CheckCard,
  isMeant: (answer: Answer) => boolean = () => true,
) => answers.filter(isMeant).map(({ id, phone }) => ({ id, says: upperFirst(phone) }))

const isTheQuestion =
  ({ asks }: CheckCard) =>
  ({ says }: Line) =>
    says === asks

/** Something at the machine, and no caution or question. */
const isDone = ({ label }: Line) => ['put back first', 'make ready', 'do'].includes(label)

/** Why an owner does not make a check, as they would put it. */
const ownersReasons = ['They cannot do that', noToolHere, 'Not safe there', 'They would rather not']
