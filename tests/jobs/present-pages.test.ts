import { describe, expect, it } from 'vitest'
import { findMachines } from '../../server/jobs/finding/find-machine.ts'
import { presentFront } from '../../server/jobs/finding/present-front.ts'
import { presentList } from '../../server/jobs/finding/present-list.ts'
import { defaultForm, movedForm } from '../../server/jobs/opening/new-job-form.ts'
import { presentNew } from '../../server/jobs/opening/present-new.ts'
import type { JobLine } from '../../server/jobs/record/events.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { smallKnowledge } from '../support/small-case.ts'

const line: JobLine = {
  id: 7,
  machine: 'wren',
  complaint: 'no-spark',
  note: 'Hilda',
  openedAt: new Date(2031, 4, 7, 9, 0),
  changedAt: new Date(2031, 4, 7, 14, 5),
  events: 4,
  summary: { readings: 3, verdict: { kind: 'named', parts: ['Start exciter'] }, repair: null },
}

const nothing = { find: '', machine: '' }

/** The small knowledge with that many more machines, each with a name of its own. */
function withMachines(count: number): Knowledge {
  const [wren] = smallKnowledge.machines.values()
  const more = Array.from({ length: count }, (_, i) => ({
    ...wren!,
    id: `crake-${i}`,
    name: `Crake ${i}`,
    maker: 'Fennbank',
    family: 'Fennbank pumps',
  }))
  return {
    ...smallKnowledge,
    machines: new Map([wren!, ...more].map((machine) => [machine.id, machine])),
  }
}

describe('the front page', () => {
  it('has every machine with its complaints in their groups, and leaves out empty groups', () => {
    expect(presentFront(smallKnowledge, [line], nothing)).toMatchObject({
      says: '1 machine',
      machines: [
        {
          name: 'Mossgill Wren 1',
          groups: [
            {
              name: 'Spark',
              complaints: [
                {
                  title: 'No spark',
                  owner: 'It does not even cough.',
                  href: '/jobs/new?machine=wren&complaint=no-spark',
                },
              ],
            },
          ],
        },
      ],
      inProgress: [{ href: '/jobs/7', model: 'Wren 1' }],
    })
  })

  it('shows the first of many machines and says how many there are', () => {
    const page = presentFront(withMachines(300), [], nothing)
    expect(page.machines).toHaveLength(8)
    expect(page.machines.filter(({ open }) => open)).toEqual([])
    expect(page.says).toBe('The first 8 of 301 machines. Type more of the name.')
  })

  it('opens the only machine that fits, or the one that was chosen', () => {
    const all = withMachines(300)
    const found = presentFront(all, [], { find: 'craek 299', machine: '' })
    expect(found.machines).toMatchObject([{ id: 'crake-299', open: true }])
    expect(found.says).toBe('1 of 301 machines')
    const chosen = presentFront(all, [], { find: '', machine: 'wren' })
    expect(chosen.machines).toMatchObject([{ id: 'wren', open: true }])
    expect(chosen.all).toEqual({ href: '/', text: 'All machines' })
  })

  it('says what to do where no machine is called so', () => {
    const page = presentFront(smallKnowledge, [], { find: ' zebra ', machine: '' })
    expect(page.machines).toEqual([])
    expect(page.says).toBe('No machine is called “zebra”. Try fewer letters, or its maker.')
  })
})

describe('a machine', () => {
  const names = (typed: string) => findMachines(withMachines(3), typed).map(({ id }) => id)

  it.each([
    ['wren', ['wren']],
    ['WREM mosgill', ['wren']],
    ['fenbank', ['crake-0', 'crake-1', 'crake-2']],
    ['pumps crake 1', ['crake-1']],
    ['crake heron', []],
    ['?!', []],
  ])('is found by maker, name and kind, in any order, slips forgiven: %s', (typed, found) => {
    expect(names(typed)).toEqual(found)
  })

  it('that is spelt so comes before one that is nearly spelt so', () => {
    const [wren] = smallKnowledge.machines.values()
    const near = { ...wren!, id: 'near', name: 'Crane 1' }
    const exact = { ...wren!, id: 'exact', name: 'Crake 1' }
    const machines = new Map([near, exact].map((machine) => [machine.id, machine]))
    const found = findMachines({ ...smallKnowledge, machines }, 'crake')
    expect(found.map(({ id }) => id)).toEqual(['exact', 'near'])
  })
})

describe('the list of jobs', () => {
  const asked = { find: '', field: '', state: '', page: 1 } as const
  const listed = (jobs: readonly JobLine[]) =>
    presentList(smallKnowledge, { asked, jobs, open: jobs.length, closed: 0 })
  const first = (summary: JobLine['summary'], events = 4) =>
    listed([{ ...line, summary, events }]).jobs[0]!

  it('says of each what it is, how it stands, and when it was touched last', () => {
    expect(listed([line]).jobs).toEqual([
      {
        number: '0007',
        href: '/jobs/7',
        machine: 'Mossgill Wren 1',
        model: 'Wren 1',
        complaint: 'No spark',
        note: 'Hilda',
        changed: '7 May 2031, 14:05',
        changedIso: line.changedAt.toISOString(),
        state: 'Open',
        verdict: 'Named: start exciter.',
      },
    ])
  })

  it('tells a job that was only opened, one whose machine is gone, and one from before summaries', () => {
    expect(first(null, 1)).toMatchObject({ state: 'Open', verdict: 'Just opened.' })
    expect(first(null)).toMatchObject({ state: 'Open', verdict: '3 entries.' })
    const [orphan] = listed([{ ...line, machine: 'gone', complaint: 'gone-too' }]).jobs
    expect(orphan).toMatchObject({ machine: 'gone', complaint: 'gone-too' })
  })

  const at = new Date(2031, 4, 8, 9, 30).toISOString()
  it.each([
    ['ask', [], '3 readings, no part named yet.'],
    ['cannotSeparate', ['Coil', 'Igniter'], 'Down to coil or igniter.'],
    ['cannotSeparate', ['Coil', 'Igniter', 'Cap', 'Plug'], 'Down to coil, igniter or 2 others.'],
    ['contradiction', [], 'The readings contradict each other.'],
    ['outsideThisTree', [], 'The cause is none of those listed.'],
  ] as const)('says in a few words what the readings came to: %s %j', (kind, parts, says) => {
    const summary = { readings: 3, verdict: { kind, parts: [...parts] }, repair: null }
    expect(first(summary)).toMatchObject({ state: 'Open', verdict: says })
  })

  it.each([
    [null, 'Repaired', 'Repaired: coil. Not proved yet.'],
    ['gone', 'Proved', 'Repaired: coil. Proved 8 May 2031, 09:30.'],
    ['still there', 'Open', 'Still there after coil. Named: igniter.'],
  ] as const)('says what was repaired, and what came of it: %s', (outcome, state, says) => {
    const verdict = { kind: 'named' as const, parts: ['Igniter'] }
    const summary = { readings: 3, verdict, repair: { parts: ['Coil'], outcome, at } }
    expect(first(summary)).toMatchObject({ state, verdict: says })
  })

  it('leads to the next page and the one before, with what was asked for', () => {
    const page = presentList(smallKnowledge, {
      asked: { find: 'red one', field: 'note', state: 'open', page: 2 },
      jobs: [line],
      open: 60,
      closed: 5,
    })
    expect(page).toMatchObject({
      says: '60 jobs found',
      pages: 'Page 2 of 3',
      previous: { href: '/jobs?find=red+one&in=note&state=open' },
      next: { href: '/jobs?find=red+one&in=note&state=open&page=3' },
    })
    expect(page.states.find(({ chosen }) => chosen)).toMatchObject({ says: 'In progress' })
  })

  it.each([
    [{}, '65 jobs, 60 in progress'],
    [{ find: 'red' }, '65 jobs found, 60 in progress'],
    [{ state: 'closed' as const }, '5 jobs found'],
  ])('says how many there are: %j', (more, says) => {
    const found = { asked: { ...asked, ...more }, jobs: [line], open: 60, closed: 5 }
    expect(presentList(smallKnowledge, found).says).toBe(says)
  })
})

describe('the form that opens a job', () => {
  const form = {
    job: 'wren/no-spark',
    where: 'trailside',
    air: 'warm',
    airUnit: 'F',
    engine: 'hot',
    set: 'trail',
    tools: { hands: [], trail: ['meter'], bench: ['torch', 'rag'] },
    meter: 'pocket',
    who: 'self',
    kitSet: 'bare',
    kit: { bare: ['light'] },
    afloat: '',
    note: 'Hilda',
  } as const

  it('keeps everything that was chosen and typed', () => {
    const page = presentNew(smallKnowledge, form)
    const all = [page.where, page.engine, page.meter, page.who].flatMap(({ choices }) => choices)
    const chosen = [...all, ...page.tools.sets].filter((choice) => choice.chosen)
    expect(chosen.map(({ value }) => value)).toEqual([
      'trailside',
      'hot',
      'pocket',
      'self',
      'trail',
    ])
    const ticked = page.tools.sets.map(({ field, tools }) => [
      field,
      tools.filter((tool) => tool.chosen).map(({ value }) => value),
    ])
    expect(ticked).toEqual([
      ['tools-hands', []],
      ['tools-trail', ['meter']],
      ['tools-bench', ['torch', 'rag']],
    ])
    expect(page.air).toMatchObject({ value: 'warm', unit: 'F', hint: '°F, unless you write °C.' })
    expect(page.note).toEqual({ value: 'Hilda' })
    expect(page.problems).toEqual([])
  })

  it('says what it is about, and leads to another complaint of the machine', () => {
    expect(presentNew(smallKnowledge, form).subject).toEqual({
      machine: 'Mossgill Wren 1',
      complaint: 'No spark',
      another: { href: '/?machine=wren', text: 'Another complaint' },
    })
    expect(presentNew(smallKnowledge, { ...form, job: 'wren/other' }).subject).toBeUndefined()
  })

  it('says what is wrong above and beside the field', () => {
    const page = presentNew(smallKnowledge, form, { air: 'Write a number.', set: 'Choose.' })
    expect(page.problems).toEqual([
      { field: 'air', sentence: 'Write a number.' },
      { field: 'tools', sentence: 'Choose.' },
    ])
    expect(page.air).toMatchObject({ value: 'warm', problem: 'Write a number.' })
    expect(page.tools.problem).toBe('Choose.')
    expect(page.title).toBe('Not open yet')
  })

  it('comes with the tools of its place, and an air temperature in the unit of the shop', () => {
    const fresh = defaultForm(smallKnowledge, { where: 'trailside' }, 'F')
    expect(fresh).toMatchObject({ set: 'trail', air: '68\u00a0°F', airUnit: 'F' })
    expect(fresh.tools).toMatchObject({ hands: [], trail: ['meter', 'rope'] })
  })

  it.each([
    ['bench', 'trailside', 'trail'],
    ['trail', 'bench', 'bench'],
    ['hands', 'trailside', 'hands'],
  ])('moved with %s to the %s has %s', (set, where, then) => {
    const query = { set, where, 'tools-bench': 'rag', air: '3', note: 'Hilda' }
    expect(movedForm(smallKnowledge, query)).toMatchObject({
      set: then,
      air: '3',
      note: 'Hilda',
      tools: { bench: ['rag'] },
    })
  })
})
