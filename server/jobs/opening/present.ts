import { complaintsFor } from '../../knowledge/fits.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import type { JobLine } from '../record/events.ts'
import { engineWords, placeWords } from '../words/names.ts'
import { counted, dateAndTime, jobNumber, lowerFirst, upperFirst } from '../words/sentences.ts'
import type { Choice, FrontPage, JobRow, JobsPage, NewJobPage } from './views.ts'

/** The front page: every machine with the complaints that fit it, and the jobs worked on last. */
export function presentFront(knowledge: Knowledge, latest: readonly JobLine[]): FrontPage {
  return {
    title: 'What does it do, or not do?',
    machines: [...knowledge.machines.values()].map((machine) => ({
      id: machine.id,
      name: machineName(machine),
      about: machine.about,
      complaints: complaintsFor(knowledge, machine.id).map(({ id, title, owner }) => ({
        title,
        owner,
        href: `/jobs/new?machine=${encodeURIComponent(machine.id)}&complaint=${encodeURIComponent(id)}`,
      })),
    })),
    latest: latest.map((line) => jobRow(knowledge, line)),
  }
}

/** All jobs, as the store lists them. */
export function presentList(knowledge: Knowledge, jobs: readonly JobLine[]): JobsPage {
  return { title: 'Jobs', jobs: jobs.map((line) => jobRow(knowledge, line)) }
}

function jobRow(knowledge: Knowledge, line: JobLine): JobRow {
  const machine = knowledge.machines.get(line.machine)
  return {
    number: jobNumber(line.id),
    href: `/jobs/${line.id}`,
    machine: machine ? machineName(machine) : line.machine,
    complaint: knowledge.complaints.get(line.complaint)?.title ?? line.complaint,
    note: line.note,
    changed: dateAndTime(line.changedAt),
    changedIso: line.changedAt.toISOString(),
    // The first entry is the opening itself.
    stands: line.events > 1 ? counted(line.events - 1, 'entry', 'entries') : 'just opened',
  }
}

/**
 * What was typed and chosen in the form that opens a job, as text, whether it can be taken or not.
 * Posted to `/jobs` under these names; `job` is `machine/complaint`, `tools` may come several times.
 */
export interface NewJobForm {
  readonly job: string
  readonly where: string
  readonly air: string
  readonly engine: string
  readonly tools: readonly string[]
  readonly meter: string
  readonly note: string
}

/** The form that opens a job: with its defaults, or as it was typed with what is wrong in it. */
export function presentNew(
  knowledge: Knowledge,
  form: NewJobForm,
  problems: Readonly<Partial<Record<keyof NewJobForm, string>>> = {},
): NewJobPage {
  const choice = (field: 'job' | 'where' | 'engine' | 'meter' | 'tools') => {
    const chosen = [form[field]].flat()
    return (value: string, says: string, more = ''): Choice => ({
      value,
      says,
      more,
      chosen: chosen.includes(value),
    })
  }
  return {
    title: 'Open a job',
    action: '/jobs',
    problems: Object.entries(problems).map(([field, sentence]) => ({ field, sentence })),
    complaints: [...knowledge.machines.values()].map((machine) => ({
      machine: machineName(machine),
      choices: complaintsFor(knowledge, machine.id).map(({ id, title, owner }) =>
        choice('job')(`${machine.id}/${id}`, title, owner),
      ),
    })),
    where: Object.entries(placeWords).map(([value, says]) => choice('where')(value, says)),
    elsewhere: elsewhere(form),
    engine: Object.entries(engineWords).map(([value, says]) => choice('engine')(value, says)),
    air: { value: form.air, ...(problems.air && { problem: problems.air }) },
    note: { value: form.note, ...(problems.note && { problem: problems.note }) },
    tools: Object.entries(knowledge.tools.tools).map(([id, { name }]) =>
      choice('tools')(id, upperFirst(name)),
    ),
    meters: [...knowledge.meters.values()].map(({ id, name, about }) =>
      choice('meter')(id, name, about),
    ),
  }
}

function elsewhere({ job, where }: NewJobForm): NewJobPage['elsewhere'] {
  const [machine = '', complaint = ''] = job.split('/')
  const other = where === 'trailside' ? 'bench' : 'trailside'
  return {
    href: `/jobs/new?${new URLSearchParams({ machine, complaint, where: other })}`,
    text: `Not here? Begin again with the tools one has ${lowerFirst(placeWords[other])}.`,
  }
}
