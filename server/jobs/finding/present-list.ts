import type { Knowledge } from '../../knowledge/knowledge.ts'
import { counted } from '../../web/words.ts'
import type { JobLine } from '../record/events.ts'
import { jobRow } from './job-row.ts'
import { type AskedOfList, addressOf, jobsOnPage } from './list-query.ts'
import type { Choice, JobsPage } from './views.ts'

/** What was asked, and what the store says to it. */
export interface Found {
  readonly asked: AskedOfList
  readonly jobs: readonly JobLine[]
  /** Of those that fit the words, whatever their state. */
  readonly open: number
  readonly closed: number
}

/** The list of jobs: one page of those that were asked for. */
export function presentList(knowledge: Knowledge, { asked, jobs, open, closed }: Found): JobsPage {
  const { state, find, field, page, problem } = asked
  const count = { '': open + closed, open, closed }[state]
  const pages = Math.max(1, Math.ceil(count / jobsOnPage))
  const isNarrowed = find !== '' || state !== ''
  const turned = (text: string, to: number) => ({ text, href: addressOf({ ...asked, page: to }) })
  const choice = (chosen: string) => (value: string, words: string) =>
    ({ value, says: words, more: '', chosen: value === chosen }) satisfies Choice
  const ofState = choice(state)
  return {
    title: 'Jobs',
    find,
    ...(problem !== undefined && { problem }),
    fields: Object.entries(fieldChoices).map(([value, words]) => choice(field)(value, words)),
    states: [ofState('', 'All'), ofState('open', 'In progress'), ofState('closed', 'Proved')],
    says: problem ?? countWords({ count, open, state, isNarrowed }),
    isEmpty: count === 0 && !isNarrowed && problem === undefined,
    jobs: jobs.map((line) => jobRow(knowledge, line)),
    ...(isNarrowed && { all: { href: '/jobs', text: 'All jobs' } }),
    ...(pages > 1 && { pages: `Page ${page} of ${pages.toLocaleString('en-GB')}` }),
    ...(page > 1 && { previous: turned('Previous', page - 1) }),
    ...(page < pages && { next: turned('Next', page + 1) }),
  }
}

const fieldChoices = {
  '': 'Anywhere',
  machine: 'Machine',
  complaint: 'Complaint',
  part: 'Part',
  note: 'Note',
} as const

interface Counted {
  readonly count: number
  /** Of those that fit the words. */
  readonly open: number
  readonly state: AskedOfList['state']
  readonly isNarrowed: boolean
}

function countWords({ count, open, state, isNarrowed }: Counted): string {
  if (count === 0 && isNarrowed) return 'No job fits. Try fewer letters, or look anywhere.'
  const jobs = counted(count, 'job') + (isNarrowed ? ' found' : '')
  return state === '' ? `${jobs}, ${open.toLocaleString('en-GB')} in progress` : jobs
}
