import { purposeOf } from '../check/form.ts'
import { presentCheck } from '../check/present.ts'
import type { CheckView } from '../check/view.ts'
import { leftOver } from '../posts/left-over.ts'
import { presentLast } from '../readings/last.ts'
import { stands } from '../record/repairs.ts'
import { type Asked, wrongIn } from '../standing/asked.ts'
import { presentHead } from '../standing/head.ts'
import type { Standing } from '../standing/standing.ts'
import { afterTheRun, beforeTheRun } from '../standing/still-apart.ts'
import { ticketOf } from '../standing/ticket.ts'
import { presentVerdict } from '../verdict/present.ts'
import { presentRepair } from '../verdict/repair.ts'
import type { RepairView, VerdictView } from '../verdict/view.ts'
import { cautionsEverywhere, noCautions, presentCautions } from '../words/cautions/cautions.ts'
import type { Fact } from '../words/fact.ts'
import { readingInShort } from '../words/reading-words.ts'
import { counted, lowerFirst, sentence } from '../words/sentences.ts'
import { leftByOwner } from './left-by-owner.ts'
import { presentRooms } from './rooms.ts'
import type { JobPage } from './view.ts'

/** The page of a job, ready to print. */
export function presentJob(input: Standing & Asked): JobPage {
  const { folded, job } = input
  const proposal = input.walk.step.kind === 'ask' ? input.walk.step.proposal : undefined
  const asked = input.refused?.check ?? input.correcting ?? input.take ?? input.check
  const onPage = input.found === undefined ? (asked ?? nextCheck(input)) : undefined
  const card = onPage === undefined ? undefined : input.kase.checks.get(onPage)
  const proposed = onPage === proposal?.check
  const check = card && presentCheck(input, card, { proposed, taking: purposeOf(input, card.id) })
  const verdict = input.found === undefined ? verdictOf(input) : undefined
  const repair = presentRepair(input)
  const above = leftOver(input, {
    takes: true,
    ...(check && { check }),
    ...(repair && { repair }),
  })
  const last = presentLast(input)
  const isSaid = check !== undefined || folded.repairs.at(-1)?.outcome === null
  const next = new Set(verdict?.next.map(({ says }) => says))
  const apart = isSaid ? [] : beforeTheRun(input).filter((says) => !next.has(says))
  const left = leftByOwner(input, [...(check?.steps.flatMap(({ steps }) => steps) ?? apart)])
  const facts = presentHead(input)
  // Without a check the next thing is the verdict, or what came after it.
  const ending = isRepaired(input) || verdict === undefined ? repair : undefined
  return {
    title: title(input, check ?? (verdict ? undefined : ending)),
    job: ticketOf(job),
    head: headLine(input, check, verdict),
    facts,
    said: said(input, check, verdict, ending),
    ...above,
    ...(left && { left }),
    ...(last && { last }),
    ...(check && { check }),
    ...(verdict && { verdict }),
    apart,
    afterRun: isSaid ? [] : afterTheRun(input),
    ...(repair && { repair }),
    repairFirst: isRepaired(input),
    notices: presentCautions(input, cautionsEverywhere(input)),
    rooms: presentRooms(input, check),
    onPaper: onPaper(input, facts, check),
    focus: above.notice === undefined ? focus(input, check, ending) : 'notice',
  }
}

/** Once something is repaired, only how one came to it is left to say. */
function verdictOf(input: Standing): VerdictView | undefined {
  const verdict = presentVerdict(input)
  return verdict && isRepaired(input)
    ? { ...verdict, cautions: noCautions, next: [], prove: [], couldBe: [] }
    : verdict
}

/** The proposed one; none after a repair, whose proof comes next. */
function nextCheck(input: Standing): string | undefined {
  const { step } = input.walk
  return step.kind === 'ask' && !isRepaired(input) ? step.proposal.check : undefined
}

/** Something was repaired, and is proved or waits for its proof. */
const isRepaired = ({ folded }: Standing): boolean => stands(folded.repairs.at(-1))

/** "check 4", "Tarnwick Larkfell 2i", "No spark": where one is, in one line. */
function headLine({ kase, folded }: Standing, check?: CheckView, verdict?: VerdictView): string[] {
  const made = folded.readings.size
  const ending = `${verdict ? 'verdict ' : ''}after ${counted(made, 'check')}`
  return [check ? `check ${made + 1}` : ending, kase.machine.name, kase.complaint.title]
}

/** What is printed besides: every reading in short, in the order taken, and room to write. */
function onPaper(input: Standing, facts: readonly Fact[], check?: CheckView): JobPage['onPaper'] {
  const { judged, kase } = input
  const isShown = ({ label }: Fact) => ['Opened', 'Owner says', 'Note'].includes(label)
  const come = check === undefined ? 'Repaired: which part, by whom' : 'Read or answered'
  return {
    facts: facts.filter(isShown),
    readings: [...judged].flatMap(([check, taken]) => {
      const card = kase.checks.get(check)
      return card ? sentence(readingInShort(kase, card, taken)) : []
    }),
    ticks: (check?.form.answers ?? []).map(({ says }) => says),
    blanks: [...(isRepaired(input) ? [] : [come]), 'Noted besides', 'Signed, date'],
  }
}

function focus(
  { takeRefused, skipRefused, zeroRefused, repairRefused, proofRefused }: Asked,
  check?: CheckView,
  ending?: RepairView,
): JobPage['focus'] {
  if (takeRefused ?? skipRefused ?? zeroRefused) return 'touch'
  if (repairRefused ?? proofRefused) return 'touch'
  if (check === undefined) return ending ? 'repair' : 'verdict'
  return check.form.problem === undefined ? 'check' : 'field'
}

/** Of the window: what is wrong comes first, as it is read out first and shown in a list of windows. */
function title(input: Standing & Asked, onPage?: { readonly title: string }): string {
  const { job, kase } = input
  const what = onPage?.title ?? `verdict on ${kase.complaint.title}`
  return `${wrongIn(input) === undefined ? '' : 'Not taken: '}Job ${job.id}: ${lowerFirst(what)}`
}

/** For those who hear the page: what was taken last, and the one sentence that matters most now. */
function said(
  input: Standing & Asked,
  check?: CheckView,
  verdict?: VerdictView,
  ending?: RepairView,
): string {
  const wrong = wrongIn(input)
  if (wrong !== undefined) return wrong
  const end = ending ? `${ending.title}. ${ending.says}` : `Verdict: ${verdict?.says ?? ''}`
  const now = check ? `${check.standing}: ${check.title}.` : end
  return [takenLast(input), now].filter(Boolean).join(' ')
}

function takenLast({ job, judged, kase }: Standing): string {
  const last = job.events.at(-1)?.event
  if (last === undefined || !('touches' in last)) return ''
  const card = kase.checks.get(last.check)
  const taken = judged.get(last.check)
  return card && taken ? sentence(readingInShort(kase, card, taken)) : ''
}
