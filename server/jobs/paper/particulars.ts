import { textOf, wholeOf } from '../../web/fields.ts'
import type { Particulars } from '../record/events.ts'
import type { FoundJob } from '../standing/find.ts'

type Field = keyof Particulars

/** What each is called, in the order in which they stand. */
const labels: Readonly<Record<Field, string>> = {
  serial: 'Serial number',
  hours: 'Hours or distance run',
  customer: 'Customer',
  technician: 'Technician',
}

/** Longer than any name or number, in characters. */
const longest = 80

/** The form beside the sheet: what it says of the machine and of people. */
export interface ParticularsForm {
  readonly version: number
  readonly fields: Particulars
  readonly problems: Readonly<Partial<Record<Field, string>>>
  /** Something about the whole form: "this job has moved on". */
  readonly notice?: string
}

/** What was sent. The version is 0, which no job has, where it names none. */
export function particularsFormFrom(body: unknown): ParticularsForm {
  const text = (name: Field) => textOf(body, name).trim()
  const fields = {
    serial: text('serial'),
    hours: text('hours'),
    customer: text('customer'),
    technician: text('technician'),
  }
  const problems = fieldsOf(fields)
    .filter(({ value }) => value.length > longest)
    .map(({ name, label }) => [name, `${label}: keep it to ${longest} characters.`])
  return {
    version: wholeOf(textOf(body, 'version')) ?? 0,
    fields,
    problems: Object.fromEntries(problems),
  }
}

/** The form as the job has it. */
export const formOfParticulars = ({ job, folded }: FoundJob): ParticularsForm => ({
  version: job.version,
  fields: folded.particulars,
  problems: {},
})

/** Every field with its label, in their order. */
export const fieldsOf = (fields: Particulars) =>
  Object.entries(labels).map(([name, label]) => ({
    name: name as Field,
    label,
    value: fields[name as Field],
  }))
