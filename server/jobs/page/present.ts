import type { Evidence } from '../../diagnosis/model.ts'
import { prospects } from '../../diagnosis/verdict/explain.ts'
import type { Walk } from '../../diagnosis/walk-types.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { presentOthers } from '../beside/others.ts'
import { presentSuspects } from '../beside/suspects.ts'
import { presentTree } from '../beside/tree.ts'
import { presentTreeDrawing } from '../beside/tree-drawing.ts'
import type { Taking } from '../check/form.ts'
import { presentCheck } from '../check/present.ts'
import type { CheckView } from '../check/view.ts'
import type { Judged } from '../measuring/judged.ts'
import type { Instrument } from '../measuring/meter-at-hand.ts'
import { presentReadings } from '../readings/present.ts'
import { presentTogether } from '../readings/together.ts'
import type { StoredJob } from '../record/events.ts'
import type { Folded } from '../record/fold.ts'
import { presentVerdict } from '../verdict/present.ts'
import { presentRepair } from '../verdict/repair.ts'
import type { VerdictView } from '../verdict/view.ts'
import { readingInShort } from '../words/reading-words.ts'
import { jobNumber, lowerFirst, sentence } from '../words/sentences.ts'
import { presentHead } from './head.ts'
import type { JobPage } from './view.ts'

/** All that a job's page is made from. */
export interface JobInput {
  readonly job: StoredJob
  readonly folded: Folded
  readonly kase: Case
  readonly knowledge: Knowledge
  readonly instrument: Instrument
  /** Every reading with what it is worth. */
  readonly judged: ReadonlyMap<string, Judged>
  /** The readings as they were weighed, in the order they were taken. */
  readonly evidence: readonly Evidence[]
  readonly walk: Walk
  /** A check chosen instead of the proposed one. */
  readonly check?: string
  /** A check that is made once more. */
  readonly again?: string
  /** A check whose earlier reading is being corrected. */
  readonly correcting?: string
  /** What was typed for which check and could not be taken. */
  readonly problem?: Problem
  /** The same of more touches of a check that has a reading. */
  readonly touching?: Problem
  /** Something about the whole page: "this job has moved on". */
  readonly notice?: string
}

/** A form about a check that could not be taken: what it held, and what to do. */
export interface Problem {
  readonly check: string
  readonly typed: string
  readonly sentence: string
  readonly warmth?: string
  readonly celsius?: string
  readonly rpm?: string
}

/** The page of a job, ready to print. */
export function presentJob(input: JobInput): JobPage {
  const { job, notice } = input
  const proposal = input.walk.step.kind === 'ask' ? input.walk.step.proposal : undefined
  const asked = input.problem?.check ?? input.correcting ?? input.again ?? input.check
  const onPage = asked ?? proposal?.check
  const card = onPage === undefined ? undefined : input.kase.checks.get(onPage)
  const proposed = onPage === proposal?.check
  // For the check and for the drawing of the tree alike.
  const foreseen = card ? prospects(input.kase.model, input.evidence, card.id) : []
  const check =
    card && presentCheck(input, card, { proposed, taking: takingOf(input, card.id), foreseen })
  const verdict = presentVerdict(input)
  const repair = presentRepair(input)
  return {
    title: title(input, check),
    job: {
      id: job.id,
      version: job.version,
      href: `/jobs/${job.id}`,
      number: jobNumber(job.id),
    },
    facts: presentHead(input),
    said: said(input, check, verdict),
    ...(notice !== undefined && { notice }),
    ...(check && { check }),
    ...(verdict && { verdict }),
    ...(repair && { repair }),
    readings: presentReadings(input),
    together: presentTogether(input),
    suspects: presentSuspects(input),
    tree: presentTree(input),
    treeDrawing: presentTreeDrawing(input, foreseen),
    others: presentOthers(input, onPage),
    focus: focus(input, check),
  }
}

function takingOf({ correcting, again, folded, walk }: JobInput, check: string): Taking {
  if (!folded.readings.has(check)) return 'first'
  const asks = walk.step.kind === 'ask' && walk.step.proposal.check === check
  return correcting !== check && (again === check || asks) ? 'again' : 'correction'
}

function focus({ notice, touching }: JobInput, check?: CheckView): JobPage['focus'] {
  if (notice !== undefined) return 'notice'
  if (touching !== undefined) return 'touch'
  if (check === undefined) return 'verdict'
  return check.form.problem === undefined ? 'check' : 'field'
}

function title({ job, kase }: JobInput, check?: CheckView): string {
  const what = check?.title ?? `verdict on ${kase.complaint.title}`
  return `Job ${job.id}: ${lowerFirst(what)}`
}

/** For those who hear the page: what was taken last, and the one sentence that matters most now. */
function said(input: JobInput, check?: CheckView, verdict?: VerdictView): string {
  const { notice, problem, touching } = input
  const wrong = notice ?? problem?.sentence ?? touching?.sentence
  if (wrong !== undefined) return wrong
  const now = check ? `${check.standing}: ${check.title}.` : `Verdict: ${verdict?.says ?? ''}`
  return [takenLast(input), now].filter(Boolean).join(' ')
}

function takenLast({ job, judged, kase }: JobInput): string {
  const last = job.events.at(-1)!.event
  if (!('touches' in last)) return ''
  const card = kase.checks.get(last.check)
  const taken = judged.get(last.check)
  return card && taken ? sentence(readingInShort(kase, card, taken)) : ''
}
