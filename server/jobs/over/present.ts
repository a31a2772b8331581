import { machineName } from '../../knowledge/machine-name.ts'
import { assembliesOf, type Scope } from '../../knowledge/sheet/scope.ts'
import { presentCheck } from '../check/present.ts'
import { leftOver } from '../posts/left-over.ts'
import { presentLast } from '../readings/last.ts'
import type { Over } from '../record/events.ts'
import { type Asked, wrongIn } from '../standing/asked.ts'
import { presentHead } from '../standing/head.ts'
import { nextRow, type OverRow, overRows } from '../standing/over-rows.ts'
import type { Standing } from '../standing/standing.ts'
import { stillApart } from '../standing/still-apart.ts'
import { ticketOf } from '../standing/ticket.ts'
import { cautionsEverywhere, presentCautions } from '../words/cautions/cautions.ts'
import type { Fact } from '../words/fact.ts'
import { lowerFirst, sentence, upperFirst } from '../words/sentences.ts'
import { presentReport, rowWord } from './report.ts'
import type { OverPage } from './view.ts'

/** The page of a check-over. */
export function presentOver(
  input: Standing & Asked,
  over: Over,
  before?: { readonly job: number; readonly rows: readonly OverRow[] },
): OverPage {
  const { job, kase, folded } = input
  const rows = overRows(input)
  const next = nextRow(rows)
  const chosen = input.refused?.check ?? input.correcting ?? input.take ?? input.check
  const onPage = chosen ?? next?.card.id
  const card = onPage === undefined ? undefined : kase.checks.get(onPage)
  const taking =
    !card || !folded.readings.has(card.id) ? 'reading' : input.correcting ? 'correction' : 'take'
  const check = card && presentCheck(input, card, { proposed: card.id === next?.card.id, taking })
  const report = presentReport(input, rows, before)
  const last = presentLast(input, () => '')
  const word = wordOfLast(input, rows)
  const place = rows.findIndex(({ card: { id } }) => id === onPage) + 1
  const wrong = wrongIn(input)
  const above = leftOver(input, check ? { check } : {})
  const what = check ? check.title : 'report'
  return {
    title: `${wrong === undefined ? '' : 'Not taken: '}Check-over ${job.id}: ${lowerFirst(what)}`,
    job: ticketOf(job),
    head: [
      check ? `reading ${place} of ${rows.length}` : 'report',
      kase.machine.name,
      scopeWords(input, over.scope),
    ],
    facts: factsOf(input, over),
    said: wrong ?? heard(last?.says, word, check?.title, report.says),
    ...above,
    ...(last && { last: { ...last, word } }),
    ...(check && { check }),
    apart: check ? [] : putBackAtLast(input),
    report,
    notices: presentCautions(input, cautionsEverywhere(input)),
    focus: above.notice === undefined ? focusOf(input, check !== undefined) : 'notice',
  }
}

/** Among so many readings one is called bad later than by itself. */
function wordOfLast({ job }: Standing, rows: readonly OverRow[]): string {
  const last = job.events.findLast(({ event }) => 'touches' in event)?.event
  const row = rows.find(({ card }) => last && 'check' in last && last.check === card.id)
  return row === undefined ? '' : rowWord(row, false)
}

/** All that is still apart; and where the stop circuit was, how it is tried, since that was said long ago. */
function putBackAtLast(input: Standing): string[] {
  const { job, kase } = input
  const wasApart = job.events.some(
    ({ event }) =>
      'check' in event && kase.checks.get(event.check)?.setups.some(({ stopOff }) => stopOff),
  )
  const { stop } = kase.machine
  return [...stillApart(input), ...(wasApart && stop ? [sentence(stop.try)] : [])]
}

/** For those who hear the page: what was taken and what it is worth, and what comes now. */
function heard(took = '', word: string, title: string | undefined, report: string): string {
  const now = title === undefined ? sentence(report) : `Read now: ${title}.`
  return [took, word && sentence(word), now].filter(Boolean).join(' ')
}

function focusOf(input: Asked, hasCheck: boolean): OverPage['focus'] {
  if (input.zeroRefused ?? input.skipRefused) return 'touch'
  // Who reads one after another stays at the keyboard.
  return hasCheck ? 'field' : 'verdict'
}

/** "the whole machine", "the igniter plug", "the stator plate, loose". */
export function scopeWords({ kase: { machine } }: Pick<Standing, 'kase'>, scope: Scope): string {
  switch (scope.kind) {
    case 'machine':
      return 'whole machine'
    case 'plug':
      return machine.connectors[scope.plug]?.name ?? scope.plug
    case 'loose': {
      const assembly = assembliesOf(machine).find(({ id }) => id === scope.assembly)
      return `${assembly?.name ?? scope.assembly}, loose on the bench`
    }
  }
}

function factsOf(input: Standing, { scope, serial, by }: Over): Fact[] {
  const kept = ['Opened', 'Air', 'Meter', 'Note']
  return [
    { label: 'Machine', value: machineName(input.kase.machine) },
    { label: 'Checked over', value: upperFirst(scopeWords(input, scope)) },
    ...(serial ? [{ label: 'Serial number', value: serial }] : []),
    ...(by ? [{ label: 'By', value: by }] : []),
    ...presentHead(input).filter(({ label }) => kept.includes(label)),
  ]
}
