import type { FastifyRequest } from 'fastify'
import type { ErrorPage } from '../../web/errors.ts'
import { type FieldWords, factsSent, keptToRead, type SentFact } from '../../web/kept.ts'

/** What people type or answer in the forms of a job, by the name of the field. */
export const fieldWords: FieldWords = {
  typed: { label: 'Reading' },
  cell: { label: 'Reading' },
  choice: { label: 'Answer', says: answerWords },
  celsius: { label: 'Temperature of the part, °C' },
  rpm: { label: 'Speed while read, rpm' },
  reason: { label: 'Reason' },
  air: { label: 'Air temperature' },
  cause: { label: 'What it was' },
  note: { label: 'Note' },
  price: { label: 'Price' },
  minutes: { label: 'Minutes of work' },
  find: { label: 'Find a check' },
  zero: { label: 'Probes held together, Ω' },
  serial: { label: 'Serial number, or whose it is' },
  by: { label: 'Checked by' },
  hours: { label: 'Hours or distance run' },
  customer: { label: 'Customer' },
  technician: { label: 'Technician' },
  read: { label: 'Read at the proof' },
  before: { label: 'Number of the earlier check-over' },
  name: { label: 'Name of the meter' },
  top: { label: 'Ranges up to' },
  digit: { label: 'Last digits' },
  percent: { label: '% of reading' },
  counts: { label: '+ counts' },
  number: { label: 'Number of the job' },
  learner: { label: 'Who practises' },
  seed: { label: 'Seed' },
}

/** What was typed into a form, field by field. */
export const sentIn = (body: unknown): SentFact[] => factsSent(body, fieldWords)

/** What was typed into a form for something that is not there, to be read on the page that says so. */
export const typedFor = (request: FastifyRequest): Pick<ErrorPage, 'kept'> => ({
  kept: keptToRead(request, fieldWords),
})

/** Answers are named after what they say. */
function answerWords(name: string): string {
  return name === 'over' ? 'OL' : name.replaceAll('-', ' ')
}
