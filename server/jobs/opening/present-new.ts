import { complaintsFor } from '../../knowledge/fits.ts'
import { caseFor } from '../../knowledge/instantiate.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import type { StoredJob } from '../record/events.ts'
import { engineWords, whoWords } from '../words/names.ts'
import { counted, upperFirst } from '../words/sentences.ts'
import { beginningFields } from './begins-with.ts'
import type { NewJobForm } from './new-job-form.ts'
import { goesOnWater, type NewJobProblems } from './open-form.ts'
import { fieldOfKit, fieldOfSet } from './tool-sets.ts'
import type { Choice, NewJobPage, ToolsField } from './views.ts'

/** The form that opens a job: with its defaults, or as it was typed with what is wrong in it. */
export function presentNew(
  knowledge: Knowledge,
  form: NewJobForm,
  problems: NewJobProblems = {},
): NewJobPage {
  const problemOf = (field: keyof NewJobForm) => problems[field] && { problem: problems[field] }
  const words = (
    field: 'where' | 'engine' | 'who' | 'afloat',
    all: Readonly<Record<string, string>>,
  ) => ({
    choices: Object.entries(all).map(([value, says]) => choice(value, says, form[field] === value)),
    ...problemOf(field),
  })
  const subject = subjectOf(knowledge, form)
  const failed = Object.entries(problems)
  return {
    title: failed.length === 0 ? 'Open a job' : 'Not open yet',
    action: '/jobs',
    ...(subject && { subject }),
    job: form.job,
    ...beginning(knowledge, form),
    problems: failed.map(([field, sentence]) => ({ field: idOf(field), sentence })),
    where: words('where', placeWords),
    engine: words('engine', engineWords),
    air: {
      value: form.air,
      unit: form.airUnit,
      hint: `°${form.airUnit}, unless you write °${form.airUnit === 'C' ? 'F' : 'C'}.`,
      ...problemOf('air'),
    },
    meter: {
      choices: [...knowledge.meters.values()].map(({ id, name }) =>
        choice(id, name, form.meter === id),
      ),
      ...problemOf('meter'),
    },
    tools: { sets: toolSets(knowledge, form), ...problemOf('tools'), ...problemOf('set') },
    who: words('who', whoWords),
    kit: { sets: kitSets(knowledge, form), ...problemOf('kit'), ...problemOf('kitSet') },
    ...(goesOnWater(knowledge, form) && { afloat: words('afloat', waterWords) }),
    note: { value: form.note, ...problemOf('note') },
  }
}

/** The same form on a job that is open, for what is otherwise by now. */
export function presentConditions(
  knowledge: Knowledge,
  { id, version }: StoredJob,
  form: NewJobForm,
  problems: NewJobProblems = {},
): NewJobPage {
  const page = presentNew(knowledge, form, problems)
  const title = page.problems.length === 0 ? 'How things stand now' : 'Not changed yet'
  return {
    ...page,
    title,
    action: `/jobs/${id}/conditions`,
    changes: { version, back: { href: `/jobs/${id}`, text: 'Leave it as it was' } },
  }
}

/** Beside "Work done", and short, so that both stand in one line of a phone. */
const placeWords = { bench: 'Bench', trailside: 'Trailside' } as const

const waterWords = { yes: 'On the water', no: 'On land' } as const

const choice = (value: string, says: string, chosen: boolean): Choice => ({
  value,
  says,
  more: '',
  chosen,
})

/** The set and its ticks are one field on the page. */
const idOf = (field: string): string =>
  field === 'set' ? 'tools' : field === 'kitSet' ? 'kit' : field

function subjectOf(knowledge: Knowledge, { job }: NewJobForm): NewJobPage['subject'] {
  const [machineId = '', complaintId = ''] = job.split('/')
  const machine = knowledge.machines.get(machineId)
  const complaint = complaintsFor(knowledge, machineId).find(({ id }) => id === complaintId)
  if (machine === undefined || complaint === undefined) return undefined
  return {
    machine: machineName(machine),
    complaint: complaint.title,
    another: {
      href: `/?${new URLSearchParams({ machine: machineId })}`,
      text: 'Another complaint',
    },
  }
}

/** The reading that it begins with, in words and as fields to send on. */
function beginning(knowledge: Knowledge, { job, begins }: NewJobForm): Pick<NewJobPage, 'begins'> {
  if (begins === undefined) return {}
  const [machineId = '', complaintId = ''] = job.split('/')
  const known = complaintsFor(knowledge, machineId).some(({ id }) => id === complaintId)
  const card = known && caseFor(knowledge, machineId, complaintId).checks.get(begins.check)
  const unit = card ? (card.measurand?.quantity.unit ?? '') : ''
  const title = card ? card.title : begins.check
  return {
    begins: {
      says: `${upperFirst(title)}: ${/[a-z]/i.test(begins.typed) ? begins.typed : `${begins.typed} ${unit}`}`,
      fields: beginningFields.map((name) => ({ name, value: begins[name] })),
    },
  }
}

function toolSets({ tools: { sets, tools } }: Knowledge, form: NewJobForm): ToolsField['sets'] {
  return Object.entries(sets).map(([set, { name }]) => {
    const ticked = form.tools[set] ?? []
    return {
      ...choice(set, name, form.set === set),
      field: fieldOfSet(set),
      count: counted(ticked.length, 'tool'),
      tools: Object.entries(tools).map(([id, { name }]) =>
        choice(id, upperFirst(name), ticked.includes(id)),
      ),
    }
  })
}

/** What owners carry, and what else they may have. */
function kitSets({ owner: { sets, kit } }: Knowledge, form: NewJobForm): ToolsField['sets'] {
  return Object.entries(sets).map(([set, { name }]) => {
    const ticked = form.kit[set] ?? []
    return {
      ...choice(set, name, form.kitSet === set),
      field: fieldOfKit(set),
      count: counted(ticked.length, 'thing'),
      tools: Object.entries(kit).map(([id, { asks }]) => choice(id, asks, ticked.includes(id))),
    }
  })
}
