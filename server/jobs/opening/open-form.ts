import { z } from 'zod'
import { complaintsFor } from '../../knowledge/fits.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { Place } from '../../knowledge/schema/shared.ts'
import { airIn } from '../../web/typed/temperature.ts'
import type { Opened } from '../record/fold.ts'
import type { NewJobForm } from './new-job-form.ts'

export type NewJobProblems = Partial<Record<keyof NewJobForm, string>>
export type Accepted =
  | { readonly ok: true; readonly event: Opened }
  | { readonly ok: false; readonly problems: NewJobProblems }

/** Turns the form into the first event of a job, or says what is wrong, one sentence a field. */
export function acceptOpenForm(knowledge: Knowledge, form: NewJobForm): Accepted {
  const read = openForm(knowledge, form).safeParse({ ...form, tools: form.tools[form.set] ?? [] })
  if (!read.success) return { ok: false, problems: firstProblems(read.error) }
  const { job, note, set: _, air, ...conditions } = read.data
  const { celsius, unit } = air
  return {
    ok: true,
    event: {
      kind: 'opened',
      ...job,
      conditions: { ...conditions, air: celsius, airUnit: unit },
      note,
    },
  }
}

/** In the order of the fields on the page. */
const openForm = (knowledge: Knowledge, { airUnit }: NewJobForm) =>
  z.object({
    job: z.string().transform((text, context) => {
      const [machine = '', complaint = ''] = text.split('/')
      const fitting = complaintsFor(knowledge, machine).some(({ id }) => id === complaint)
      if (!fitting) context.addIssue(misfit(knowledge, machine, complaint))
      return { machine, complaint }
    }),
    where: z.enum(Place.options, 'Choose where the work happens.'),
    engine: z.enum(['cold', 'hot'], 'Choose whether the engine is cold or hot.'),
    air: z.string().transform((text, context) => {
      const read = airIn(text, airUnit)
      if (typeof read !== 'string') return read
      context.addIssue(read)
      return z.NEVER
    }),
    meter: z.string().refine((name) => knowledge.meters.has(name), 'Choose a meter from the list.'),
    set: z
      .string()
      .refine((name) => Object.hasOwn(knowledge.tools.sets, name), 'Choose the tools at hand.'),
    tools: z.array(
      z
        .string()
        .refine(
          (name) => Object.hasOwn(knowledge.tools.tools, name),
          'Choose tools from the list.',
        ),
    ),
    note: z.string().trim().max(500, 'Keep the note to 500 characters.'),
  })

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
