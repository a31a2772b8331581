import type { ExportedReading } from './readings.ts'

/** What stands in front of each reading: the job that it is of. */
export interface ExportedHead {
  readonly job: number
  readonly openedAt: string
  readonly machine: string
  readonly machineName: string
  readonly complaint: string
  readonly complaintTitle: string
  readonly note: string
  readonly serial: string
  readonly hours: string
  readonly customer: string
  readonly technician: string
  readonly verdict: string
  readonly blamed: string
  readonly repaired: string
  readonly proved: string
}

/** The columns of a job, in their order, each with what it holds. */
const ofJob: Readonly<Record<keyof ExportedHead, string>> = {
  job: 'Number of the job.',
  openedAt: 'When it was opened: date and time in UTC (ISO 8601).',
  machine: 'Short name of the machine, as its sheet is called.',
  machineName: 'Maker and name of the machine; empty where its sheet is there no more.',
  complaint: 'Short name of the complaint, or Check-over.',
  complaintTitle: 'The complaint in words; empty where it is there no more.',
  note: 'Owner, or any note.',
  serial: 'Serial number of the machine, as it was written down.',
  hours: 'Hours or distance run, as it was written down.',
  customer: 'Customer named on the job sheet.',
  technician: 'Technician named on the job sheet last, or who made the check-over.',
  verdict:
    'What the job had come to after its last entry: to check, named, cannot separate, contradiction or outside this tree; empty of a check-over, or where nothing was read.',
  blamed:
    'The parts named, or not told apart; of a check-over those found bad. Several stand with a semicolon between.',
  repaired:
    'The parts repaired, in that order, with a semicolon between; what was no part of the tree as it was written down.',
  proved:
    'What came of the last repair: gone, still there, or not proved; empty where there was none.',
}

/** The columns of a reading, in their order, each with what it holds. */
const ofReading: Readonly<Record<keyof ExportedReading, string>> = {
  check: 'Short name of the check: it stays the same when its words are changed.',
  title: 'The check in words; empty where it is there no more.',
  part: 'What it is about, in words; empty where that is no one part.',
  quantity: 'What is measured; empty of a look or a question.',
  at: 'Where the probes touch.',
  unit: 'Unit of low, high, corrected and expanded: Ω, V, µF, mm or °, never with another prefix.',
  low: 'Low limit, in that unit; empty where there is none.',
  high: 'High limit, in that unit; empty where there is none.',
  limits: 'Both limits in words.',
  read: 'What came back, in words.',
  corrected: 'The reading as it is compared with the limits, in that unit.',
  expanded: 'How far that may be off, up or down, with 95 % certainty (JCGM 100).',
  within: 'The chance that the true value lies within the limits, from 0 to 1 (JCGM 106).',
  takes: 'How many times the check was made; 0 where it was left out.',
  state:
    'One of: good, bad, unsure, answered, could not tell, not judged, left out, withdrawn or to read. What is withdrawn counts no more; its figures are left out.',
  leftOut: 'Why it was left out.',
  typed: 'What was typed, letter by letter.',
  was: 'What was written down before it was corrected, the first first, with a semicolon between; empty where it never was.',
  changedAt: 'When it was corrected last, or withdrawn: date and time in UTC (ISO 8601).',
  readAt: 'When it was read: date and time in UTC (ISO 8601).',
  takenBy:
    'Who took it: the technician named on the sheet by then, an apprentice, or the owner by phone; empty where nobody was named.',
  air: 'Temperature of the air by then, °C; empty where it was not read.',
  partTemperature:
    'Temperature of the part by then, °C, as it was measured or assumed; empty where the reading does not follow it.',
  meter: 'The meter that it is judged with; empty where no meter reads it.',
}

export const jobColumns = Object.keys(ofJob) as readonly (keyof ExportedHead)[]
export const readingColumns = Object.keys(ofReading) as readonly (keyof ExportedReading)[]

/** View model of the page that says what the columns hold. */
export interface ColumnsPage {
  readonly title: string
  readonly tables: readonly {
    readonly id: string
    readonly name: string
    readonly columns: readonly { readonly name: string; readonly says: string }[]
  }[]
}

export function presentColumns(): ColumnsPage {
  const columns = (all: Readonly<Record<string, string>>) =>
    Object.entries(all).map(([name, says]) => ({ name, says }))
  return {
    title: 'What the columns hold',
    tables: [
      { id: 'of-reading', name: 'Of every reading', columns: columns(ofReading) },
      { id: 'of-job', name: 'In front, of the job', columns: columns(ofJob) },
    ],
  }
}
