import { describe, expect, it } from 'vitest'
import { presentFront, presentList, presentNew } from '../../server/jobs/opening/present.ts'
import type { JobLine } from '../../server/jobs/record/events.ts'
import { smallKnowledge } from '../support/small-case.ts'

const line: JobLine = {
  id: 7,
  machine: 'wren',
  complaint: 'no-spark',
  note: 'Hilda',
  openedAt: new Date(2031, 4, 7, 9, 0),
  changedAt: new Date(2031, 4, 7, 14, 5),
  events: 4,
  summary: null,
}

describe('the front page', () => {
  it('has every machine with its complaints in the words of the owner', () => {
    expect(presentFront(smallKnowledge, [line])).toMatchObject({
      machines: [
        {
          name: 'Mossgill Wren 1',
          complaints: [
            { owner: 'It does not even cough.', href: '/jobs/new?machine=wren&complaint=no-spark' },
          ],
        },
      ],
      latest: [{ href: '/jobs/7' }],
    })
  })
})

describe('the list of jobs', () => {
  it('says of each what it is and when it was touched last', () => {
    expect(presentList(smallKnowledge, [line]).jobs).toEqual([
      {
        number: '0007',
        href: '/jobs/7',
        machine: 'Mossgill Wren 1',
        complaint: 'No spark',
        note: 'Hilda',
        changed: '7 May 2031, 14:05',
        changedIso: line.changedAt.toISOString(),
        stands: '3 entries',
      },
    ])
  })

  it('tells a job that was only opened, and one whose machine is gone', () => {
    const jobs = [
      { ...line, events: 1 },
      { ...line, machine: 'gone', complaint: 'gone-too' },
    ]
    const [opened, orphan] = presentList(smallKnowledge, jobs).jobs
    expect(opened!.stands).toBe('just opened')
    expect(orphan).toMatchObject({ machine: 'gone', complaint: 'gone-too' })
  })
})

describe('the form that opens a job', () => {
  const form = {
    job: 'wren/no-spark',
    where: 'trailside',
    air: 'warm',
    engine: 'hot',
    tools: ['meter'],
    meter: 'pocket',
    note: 'Hilda',
  }

  it('keeps everything that was chosen and typed', () => {
    const page = presentNew(smallKnowledge, form)
    const chosen = [
      ...page.complaints.flatMap(({ choices }) => choices),
      ...page.where,
      ...page.engine,
      ...page.tools,
      ...page.meters,
    ].filter((choice) => choice.chosen)
    expect(chosen.map(({ value }) => value)).toEqual([
      'wren/no-spark',
      'trailside',
      'hot',
      'meter',
      'pocket',
    ])
    expect(page.air).toEqual({ value: 'warm' })
    expect(page.note).toEqual({ value: 'Hilda' })
    expect(page.problems).toEqual([])
  })

  it('says what is wrong above and beside the field', () => {
    const page = presentNew(smallKnowledge, form, { air: 'Write a number.' })
    expect(page.problems).toEqual([{ field: 'air', sentence: 'Write a number.' }])
    expect(page.air).toEqual({ value: 'warm', problem: 'Write a number.' })
  })

  it('leads to the same form for the other place', () => {
    expect(presentNew(smallKnowledge, form).elsewhere).toEqual({
      href: '/jobs/new?machine=wren&complaint=no-spark&where=bench',
      text: 'Not here? Begin again with the tools one has at the bench.',
    })
  })
})
