import { z } from 'zod'
import { complaintsFor } from '../../knowledge/fits.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { Place } from '../../knowledge/schema/shared.ts'
import { numberIn, textOf, textsOf } from '../../web/fields.ts'
import type { Opened } from '../record/fold.ts'
import type { NewJobForm } from './present.ts'

/** What the form was sent with, as text. */
export function openFormFrom(body: unknown): NewJobForm {
  return {
    job: textOf(body, 'job'),
    where: textOf(body, 'where'),
    air: textOf(body, 'air'),
    engine: textOf(body, 'engine'),
    tools: textsOf(body, 'tools'),
    meter: textOf(body, 'meter'),
    note: textOf(body, 'note'),
  }
}

/** The form as it first comes: most people can send it as it is. */
export function defaultForm(knowledge: Knowledge, query: unknown): NewJobForm {
  const where = Place.catch('bench').parse(textOf(query, 'where'))
  const usual = Object.entries(knowledge.tools.tools).filter(([, tool]) =>
    tool.usual.includes(where),
  )
  return {
    job: `${textOf(query, 'machine')}/${textOf(query, 'complaint')}`,
    where,
    air: '20',
    engine: 'cold',
    tools: usual.map(([name]) => name),
    meter: [...knowledge.meters.keys()][0] ?? '',
    note: '',
  }
}

export type NewJobProblems = Partial<Record<keyof NewJobForm, string>>
export type Accepted =
  | { readonly ok: true; readonly event: Opened }
  | { readonly ok: false; readonly problems: NewJobProblems }

/** Turns the form into the first event of a job, or says what is wrong, one sentence a field. */
export function acceptOpenForm(knowledge: Knowledge, form: NewJobForm): Accepted {
  const read = openForm(knowledge).safeParse(form)
  if (!read.success) return { ok: false, problems: firstProblems(read.error) }
  const { job, note, ...conditions } = read.data
  return { ok: true, event: { kind: 'opened', ...job, conditions, note } }
}

const openForm = (knowledge: Knowledge) =>
  z.object({
    job: z.string().transform((text, context) => {
      const [machine = '', complaint = ''] = text.split('/')
      const fitting = complaintsFor(knowledge, machine).some(({ id }) => id === complaint)
      if (!fitting) context.addIssue(misfit(knowledge, machine, complaint))
      return { machine, complaint }
    }),
    where: z.enum(Place.options, 'Choose where the work happens.'),
    air: AirTemperature,
    engine: z.enum(['cold', 'hot'], 'Choose whether the engine is cold or hot.'),
    tools: z.array(
      z
        .string()
        .refine(
          (name) => Object.hasOwn(knowledge.tools.tools, name),
          'Choose tools from the list.',
        ),
    ),
    meter: z.string().refine((name) => knowledge.meters.has(name), 'Choose a meter from the list.'),
    note: z.string().trim().max(500, 'Keep the note under 500 characters.'),
  })

/** As people write it: `-25`, `−5`, `21,5`, `20 °C`. */
const AirTemperature = z
  .string()
  .trim()
  .max(20, temperatureProblem())
  .transform((text) => numberIn(text.replace(/\s*(°\s*)?C?$/i, '')))
  .refine((air) => air !== null, temperatureProblem())
  .refine((air) => air >= -50 && air <= 60, 'The air temperature must be from −50 to 60 °C.')

function temperatureProblem(): string {
  return 'Write the air temperature in °C as a number, such as 20 or −5.'
}

function misfit(knowledge: Knowledge, machine: string, complaint: string): string {
  const known = knowledge.machines.get(machine)
  const title = knowledge.complaints.get(complaint)?.title
  if (known === undefined || title === undefined) return 'Choose a machine and its complaint.'
  return `The ${known.name} has no parts that “${title}” could come from; choose another complaint.`
}

/** One sentence a field: the first thing wrong in it. */
function firstProblems({ issues }: z.ZodError): NewJobProblems {
  const problems: Record<PropertyKey, string> = {}
  for (const { path, message } of issues) {
    const [field] = path
    if (field !== undefined) problems[field] ??= message
  }
  return problems
}
