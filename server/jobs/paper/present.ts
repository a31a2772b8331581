import type { PhotoRecord } from '../../store/photos/records.ts'
import { photoViews } from '../photos/present.ts'
import { gotGoing } from '../record/events.ts'
import { stands } from '../record/repairs.ts'
import { presentHead } from '../standing/head.ts'
import type { Standing } from '../standing/standing.ts'
import { ticketOf } from '../standing/ticket.ts'
import { presentVerdict } from '../verdict/present.ts'
import { repairedNames } from '../words/names.ts'
import { dateAndTime, lowerFirst, sentence, upperFirst } from '../words/sentences.ts'
import { presentHeed } from './heed.ts'
import { fieldsOf, formOfParticulars, type ParticularsForm } from './particulars.ts'
import { presentSheetReadings } from './readings.ts'
import { reasoning } from './reasoning.ts'
import { presentProof, presentSheetRepairs } from './repairs.ts'
import type { JobSheet } from './view.ts'

/** The sheet of a job at whatever stage it is. */
export function presentSheet(
  input: Standing,
  photos: readonly PhotoRecord[] = [],
  form: ParticularsForm = formOfParticulars(input),
): JobSheet {
  const { job, kase, folded } = input
  const { technician, customer } = folded.particulars
  const proof = presentProof(input)
  return {
    title: `${isRefused(form) ? 'Not taken: ' : ''}Job ${job.id}: job sheet`,
    job: ticketOf(job),
    state: stateWords(input),
    facts: presentHead(input)
      .filter(({ label }) => !notOnSheet.includes(label))
      .map(({ label, value }) => ({ label, value })),
    particulars: fieldsOf(folded.particulars).filter(({ value }) => value !== ''),
    form: presentParticulars(input, form),
    ...presentSheetReadings(input),
    leftOut: [...folded.skipped].map(([check, reason]) =>
      sentence(`${upperFirst(kase.checks.get(check)?.title ?? check)}: ${lowerFirst(reason)}`),
    ),
    reasoning: reasoning(input),
    verdict: verdictOnSheet(input),
    photos: photoViews(input, shownOnSheet(photos)),
    repairs: presentSheetRepairs(input),
    ...(proof && { proof }),
    heed: presentHeed(input),
    signatures: [signedBy('Technician', technician), signedBy('Customer', customer), 'Date'],
    asOf: `As it stood on ${dateAndTime(job.events.at(-1)?.at ?? folded.openedAt)}.`,
  }
}

const isRefused = ({ notice, problems }: ParticularsForm): boolean =>
  notice !== undefined || Object.keys(problems).length > 0

/** "Technician: Ada Quill", or only who is to sign. */
const signedBy = (who: string, name: string) => (name === '' ? who : `${who}: ${name}`)

function presentParticulars({ job, folded }: Standing, form: ParticularsForm): JobSheet['form'] {
  const { version, fields, problems, notice } = form
  return {
    action: `/jobs/${job.id}/particulars`,
    version,
    open: isRefused(form),
    ...(notice !== undefined && { notice }),
    fields: fieldsOf(fields).map((field) => {
      const problem = problems[field.name]
      return { ...field, ...(problem !== undefined && { problem }) }
    }),
    submit: Object.values(folded.particulars).some(Boolean) ? 'Change it' : 'Put it on the sheet',
  }
}

/** As many as stand side by side: those of a check first, of each kind the latest. */
function shownOnSheet(photos: readonly PhotoRecord[]): PhotoRecord[] {
  const latest = photos.toReversed()
  const ofChecks = latest.filter(({ check }) => check !== null)
  return [...ofChecks, ...latest.filter(({ check }) => check === null)].slice(0, mostOnSheet)
}

const mostOnSheet = 4

/** What was at hand says nothing to whoever reads the sheet; what was repaired has a place of its own. */
const notOnSheet = ['Tools at hand', 'Repaired, still there']

function stateWords({ folded, walk }: Standing): string {
  const last = folded.repairs.at(-1)
  if (last?.outcome === 'gone') {
    return last.byPhone
      ? 'Finished by phone: its owner put it right, and says that the complaint is gone.'
      : 'Finished: repaired and proved.'
  }
  if (last?.outcome === null) {
    return last.byPhone
      ? 'Not finished: its owner put it right by phone, and has yet to say whether it stays away.'
      : 'Not finished: repaired, and not proved yet.'
  }
  const isNamed = walk.step.kind === 'named'
  if ([...folded.tried.values()].some(gotGoing)) {
    return `Not finished: its owner got going by phone. ${isNamed ? 'What is named is not repaired' : 'What is wrong is not settled'} yet.`
  }
  return `Not finished: ${isNamed ? 'named, and not repaired' : 'the cause is not settled'} yet.`
}

/** What was repaired and ended the complaint was it, whether the readings had come so far or not. */
function verdictOnSheet(input: Standing): JobSheet['verdict'] {
  const { folded, kase, walk } = input
  const verdict = presentVerdict(input)
  const last = folded.repairs.at(-1)
  const named: readonly string[] = walk.step.kind === 'named' ? walk.step.parts : []
  const isBlamed = last?.parts.some((part) => named.includes(part))
  if (stands(last) && !isBlamed) {
    const parts = repairedNames(kase, [last])
    const says =
      last.outcome === 'gone'
        ? `It was ${parts}: put right, and the complaint is gone.`
        : `Put right without a verdict: ${parts}.`
    return { stamp: 'by the repair', says }
  }
  if (verdict === undefined) return { stamp: '', says: 'No part is named yet.' }
  return { stamp: verdict.stamp, says: verdict.says }
}
