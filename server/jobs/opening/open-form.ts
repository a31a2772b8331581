import { z } from 'zod'
import { complaintsFor } from '../../knowledge/fits.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { Place } from '../../knowledge/schema/shared.ts'
import { airIn } from '../../web/typed/temperature.ts'
import { whos } from '../record/events.ts'
import type { Opened } from '../record/fold.ts'
import type { NewJobForm } from './new-job-form.ts'
import { setAt, toolsInKit } from './tool-sets.ts'

export type NewJobProblems = Partial<Record<keyof NewJobForm, string>>
export type Accepted =
  | { readonly ok: true; readonly event: Opened }
  | { readonly ok: false; readonly problems: NewJobProblems }

/** Turns the form into the first event of a job, or says what is wrong, one sentence a field. */
export function acceptOpenForm(knowledge: Knowledge, form: NewJobForm): Accepted {
  const fields = form.who === 'owner' ? ownersFields(knowledge, form) : form
  const read = openForm(knowledge, form).safeParse({
    ...fields,
    tools: fields.tools[fields.set] ?? [],
    kit: fields.kit[fields.kitSet] ?? [],
  })
  if (!read.success) return { ok: false, problems: firstProblems(read.error) }
  const { job, note, set: _, kitSet: __, air, who, kit, afloat, ...conditions } = read.data
  const { celsius, unit } = air
  const byPhone = who === 'owner'
  return {
    ok: true,
    event: {
      kind: 'opened',
      ...job,
      conditions: {
        ...conditions,
        ...(byPhone && { tools: toolsInKit(knowledge, kit), kit }),
        ...(asksAfloat(knowledge, form) && afloat === 'yes' && { afloat: true }),
        air: celsius,
        airUnit: unit,
        ...(who !== 'self' && { who }),
      },
      note,
    },
  }
}

/** Away from the bench, a boat may be on the water: what is safe on land drowns people. */
const asksAfloat = (knowledge: Knowledge, form: NewJobForm): boolean =>
  (form.who === 'owner' || form.where === 'trailside') && goesOnWater(knowledge, form)

/** The machine drives a boat. */
export function goesOnWater({ machines }: Knowledge, { job }: NewJobForm): boolean {
  const [machine = ''] = job.split('/')
  return machines.get(machine)?.afloat === true
}

/** An owner is far from a bench, and has the meter that owners have: nobody asks for either. */
function ownersFields(knowledge: Knowledge, form: NewJobForm): NewJobForm {
  return {
    ...form,
    where: 'trailside',
    meter: knowledge.owner.meter,
    set: setAt(knowledge, 'trailside'),
  }
}

/** In the order of the fields on the page. */
const openForm = (knowledge: Knowledge, form: NewJobForm) =>
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
      const read = airIn(text, form.airUnit)
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
    who: z.enum(whos, 'Choose who is at the machine.'),
    kitSet: z
      .string()
      .refine(
        (name) => form.who !== 'owner' || Object.hasOwn(knowledge.owner.sets, name),
        'Choose what the owner has with them.',
      ),
    kit: z.array(
      z
        .string()
        .refine((name) => Object.hasOwn(knowledge.owner.kit, name), 'Choose from the list.'),
    ),
    afloat: z
      .string()
      .refine(
        (said) => !asksAfloat(knowledge, form) || ['yes', 'no'].includes(said),
        'Choose whether the boat is on the water, and ask where you do not see it: other rules hold there.',
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
