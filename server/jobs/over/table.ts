import { printLimits } from '../../measure/reading/print.ts'
import { textOf } from '../../web/fields.ts'
import { upperFirst } from '../../web/words.ts'
import { beyondIn } from '../measuring/doubts.ts'
import { checkFormFrom, readTouches } from '../posts/check-form.ts'
import { readManner } from '../posts/manner.ts'
import type { JobEvent } from '../record/events.ts'
import { isAskedFor, overRows } from '../standing/over-rows.ts'
import type { Standing } from '../standing/standing.ts'
import { type CautionsView, cautionsEverywhere, cautionsView } from '../words/cautions/cautions.ts'
import type { Fact } from '../words/fact.ts'
import { sentIn } from '../words/field-words.ts'
import { jobNumber } from '../words/sentences.ts'

/** View model of the table: a field for every reading that is still to be made. */
export interface TablePage {
  readonly title: string
  readonly number: string
  readonly action: string
  readonly version: number
  readonly back: { readonly href: string; readonly text: string }
  readonly notice?: string
  /** What was typed and has no row by now. */
  readonly sent?: readonly Fact[]
  /** Those of all its readings. */
  readonly cautions: CautionsView
  /** The maker's manual is among them, and needs no word at the foot. */
  readonly notices: true
  readonly rows: readonly {
    readonly field: string
    readonly says: string
    readonly at: string
    readonly limits: string
    readonly unit: string
    readonly typed: string
    readonly problem?: string
    /** The field that says what was in doubt: sent again as it is, it is taken. */
    readonly kept?: string
  }[]
}

/** What was typed into the table, by name of the check. */
export type TableForm = ReadonlyMap<string, string>
export type TableProblems = ReadonlyMap<string, string>

const fieldOf = (check: string) => `typed.${check}`
const keptOf = (check: string) => `kept.${check}`

export function tableFormFrom(input: Standing, body: unknown): TableForm {
  return new Map(
    overRows(input)
      .filter(isAskedFor)
      .map(({ card: { id } }) => [id, textOf(body, fieldOf(id)).trim()]),
  )
}

/** What was typed into rows that are not asked for, or no longer. */
export function withoutRow(input: Standing, body: unknown): readonly Fact[] {
  const rows = new Set([...tableFormFrom(input, body).keys()].map(fieldOf))
  return sentIn(body)
    .filter(({ name }) => name.startsWith(fieldOf('')) && !rows.has(name))
    .map(({ name, label, value }) => {
      const title = input.kase.checks.get(name.slice(fieldOf('').length))?.title
      return { label: title === undefined ? label : upperFirst(title), value }
    })
}

/** The readings that were typed, as events in their order; or what is wrong, a sentence a field. */
export function readTable(
  { kase, folded, meter }: Standing,
  form: TableForm,
  body: unknown,
): { readonly events: readonly JobEvent[]; readonly problems: TableProblems } {
  const events: JobEvent[] = []
  const problems = new Map<string, string>()
  for (const [check, typed] of form) {
    const card = kase.checks.get(check)
    if (card === undefined || typed === '') continue
    const sent = checkFormFrom({ check, typed, kept: textOf(body, keptOf(check)) })
    const read = readTouches(card, sent)
    const how = readManner(card, sent, folded.conditions)
    if (!read.ok) problems.set(check, read.sentence)
    else if (how.ok) {
      const beyond = beyondIn(card, read.touches, meter)
      if (beyond !== null && sent.kept !== read.typed) problems.set(check, beyond)
      const made = { check, typed: read.typed, touches: read.touches }
      const isFirst = !folded.readings.has(check)
      events.push(
        isFirst ? { kind: 'reading', ...made, manner: how.manner } : { kind: 'take', ...made },
      )
    }
  }
  return { events, problems }
}

export function presentTable(
  input: Standing,
  form: TableForm = new Map(),
  problems: TableProblems = new Map(),
  above: Pick<TablePage, 'notice' | 'sent'> = {},
): TablePage {
  const { job, kase, knowledge } = input
  const rows = overRows(input).filter(isAskedFor)
  const cautions = rows.flatMap(({ card }) => card.cautions)
  return {
    title: `${problems.size > 0 || above.notice ? 'Not taken: ' : ''}Check-over ${job.id}: table`,
    number: jobNumber(job.id),
    action: `/jobs/${job.id}/table`,
    version: job.version,
    back: { href: `/jobs/${job.id}`, text: 'One after another' },
    ...above,
    cautions: cautionsView([...cautions, ...cautionsEverywhere({ knowledge })]),
    notices: true,
    rows: rows.map(({ card }) => {
      const { id, title, spot, measurand } = card
      const problem = problems.get(id)
      return {
        field: fieldOf(id),
        says: upperFirst(kase.parts.get(card.part ?? '')?.name ?? title),
        at: upperFirst(spot?.says ?? ''),
        limits: printLimits(measurand.limits, measurand.quantity.unit),
        unit: measurand.quantity.unit,
        typed: form.get(id) ?? '',
        ...(problem !== undefined && { problem, kept: keptOf(id) }),
      }
    }),
  }
}
