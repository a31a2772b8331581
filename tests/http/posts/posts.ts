import { caseFor } from '../../../server/knowledge/instantiate.ts'
import { type Http, shippedKnowledge, twin } from '../../support/app.ts'
import { confirm } from '../../support/confirmed.ts'
import { measuredCheck, openForm, post } from '../../support/job.ts'

const knowledge = shippedKnowledge()
const kase = caseFor(knowledge, twin().id, 'no-spark')
const read = measuredCheck(kase).id
const unread = [...kase.checks.values()].find(
  ({ id, measurand }) => measurand?.quantity.id === 'resistance' && id !== read,
)!.id
const [part = ''] = kase.parts.keys()
/** The rates of this machine are asked for, as jobs on it were confirmed. */
export const family = 'pedlar-1c'
const ofTable = 'typed.winding-resistance.exciter-start.exciter-plug'

type Fields = Record<string, string | number | string[]>
type Refused = readonly [status: 409 | 413 | 422, fields: Fields, ...kept: string[]]

interface Post {
  readonly path: string
  /** The state of the job that it is posted to. */
  readonly at?: keyof Awaited<ReturnType<typeof begunJobs>>
  readonly refused: Readonly<Record<string, Refused>>
}

/** Numbers of jobs in every state that a post can find one in, each at version 2 or later. */
export async function begunJobs(http: Http) {
  const numberIn = (answer: { headers: Record<string, string> }) =>
    answer.headers.location!.split('/').at(-1)!
  const opened = async (changes = {}) =>
    numberIn(await post(http, '/jobs', openForm(kase, changes)).expect(303))
  const begun = await opened()
  const reading = { version: 1, check: read, typed: '52.5' }
  await post(http, `/jobs/${begun}/readings`, reading).expect(303)
  const repaired = await opened()
  await post(http, `/jobs/${repaired}/repairs`, { version: 1, parts: part }).expect(303)
  const phone = await opened({ who: 'owner', 'kit-set': 'along', 'kit-along': ['light'] })
  await post(http, `/jobs/${phone}/cut-offs`, { version: 1 }).expect(303)
  const over = numberIn(
    await post(http, `/machines/${twin().id}/check-over`, {
      ...{ scope: 'loose:stator-plate', air: '20', meter: 'hand', zero: '0.2' },
    }).expect(303),
  )
  const confirmed = [
    await confirm(http, caseFor(knowledge, family, 'no-spark'), 'igniter.dead'),
    await confirm(http, caseFor(knowledge, family, 'no-spark'), 'igniter.dead'),
  ]
  const [left = '', counted = ''] = confirmed.map((job) => job.split('/').at(-1)!)
  const reason = { number: left, reason: 'It was a test bench' }
  await post(http, `/rates/${family}/left-out`, reason).expect(303)
  return { begun, repaired, phone, over, left, counted }
}

const long = 'much too long '.repeat(40).trim()
const stale = { version: 1 }
const now = { version: 2 }

/** What every post about a check of a job is refused for. */
const aboutCheck = (typed: Fields, kept: string, check = read) =>
  ({
    'a job that has moved on': [409, { ...stale, check, ...typed }, kept],
    'a check that this job has not': [422, { ...now, check: 'warp-drive', ...typed }, kept],
    'no check at all': [422, { ...now, ...typed }, kept],
  }) satisfies Record<string, Refused>

const typedReadings = (check: string) =>
  ({
    ...aboutCheck({ typed: '4k71' }, '4k71', check),
    'nothing typed': [422, { ...now, check }],
    'far too much': [422, { ...now, check, typed: long }, long],
    'touches without end': [
      422,
      { ...now, check, typed: '51.5 '.repeat(50) },
      '51.5 '.repeat(50).trim(),
    ],
    'no number': [422, { ...now, check, typed: 'a lot' }, 'a lot'],
    'another unit': [422, { ...now, check, typed: '12 V' }, '12 V'],
  }) satisfies Record<string, Refused>

const inManner = (check: string) =>
  ({
    'a part as warm as the sun': [
      422,
      { ...now, check, typed: '51', warmth: 'measured', celsius: '5500' },
      '5500',
    ],
    'a temperature in words': [422, { ...now, check, typed: '51', celsius: long }, long],
  }) satisfies Record<string, Refused>

const repair = { parts: part, note: 'chafed at the bracket', price: '12.50', minutes: '25' }
const keptOfRepair = ['chafed at the bracket', '12.50', '25'] as const

const own = (changes: Fields) => ({
  ...{ ...now, meter: 'own', name: 'The yellow one', zero: '0.2' },
  ...{ setting: ['resistance'], top: ['600 Ω'], digit: ['0.1 Ω'], percent: ['0.8'], counts: ['4'] },
  ...changes,
})

const over = {
  scope: 'machine',
  serial: 'PL-0815',
  by: 'Ada',
  air: '20',
  meter: 'hand',
  zero: '0.2',
  before: '',
}

const conditions = {
  ...now,
  where: 'bench',
  engine: 'cold',
  air: '20',
  set: 'hands',
  note: 'out in the snow',
}

const names = { serial: 'TL2I-004417', hours: '312 h', customer: '', technician: 'Ada Quill' }

/** Everything that the pages post, and what each is refused for. The practice bench has tests of its own. */
export const posts: readonly Post[] = [
  {
    path: '/jobs',
    refused: {
      'an empty form': [422, {}],
      'a note without end': [422, openForm(kase, { note: long }), long],
      'an air in words': [
        422,
        openForm(kase, { air: 'warm', note: 'the red one' }),
        'warm',
        'the red one',
      ],
      'a machine that is not there': [
        422,
        openForm(kase, { job: 'warp/drive', note: 'the red one' }),
        'the red one',
      ],
      'a reading that it has no check for': [
        422,
        openForm(kase, { note: 'the red one', check: 'warp-drive', typed: '4k71' }),
        'the red one',
        '4k71',
      ],
    },
  },
  {
    path: '/jobs/:id/readings',
    refused: {
      ...typedReadings(unread),
      ...inManner(unread),
      'one that is there': [409, { ...now, check: read, typed: '51.5' }, '51.5'],
    },
  },
  {
    path: '/jobs/:id/corrections',
    refused: {
      ...typedReadings(read),
      ...inManner(read),
      'none to correct': [409, { ...now, check: unread, typed: '51.5' }, '51.5'],
    },
  },
  {
    path: '/jobs/:id/takes',
    refused: {
      ...typedReadings(read),
      'none to add to': [409, { ...now, check: unread, typed: '51.5' }, '51.5'],
    },
  },
  {
    path: '/jobs/:id/withdrawals',
    refused: { ...aboutCheck({}, ''), 'none to withdraw': [409, { ...now, check: unread }] },
  },
  {
    path: '/jobs/:id/acceptances',
    refused: { ...aboutCheck({}, ''), 'none to accept': [409, { ...now, check: unread }] },
  },
  {
    path: '/jobs/:id/skips',
    refused: {
      ...aboutCheck({ reason: 'the cover is riveted' }, 'the cover is riveted', unread),
      'no reason': [422, { ...now, check: unread }],
      'a reason without end': [422, { ...now, check: unread, reason: long }, long],
      'one that is read': [
        409,
        { ...now, check: read, reason: 'the cover is riveted' },
        'the cover is riveted',
      ],
    },
  },
  {
    path: '/jobs/:id/conditions',
    refused: {
      'an empty form': [422, {}],
      'a job that has moved on': [409, { ...conditions, ...stale }, 'out in the snow'],
      'a note without end': [422, { ...conditions, note: long }, long],
      'an air in words': [
        422,
        { ...conditions, air: 'biting cold' },
        'biting cold',
        'out in the snow',
      ],
      'a place that is none': [422, { ...conditions, where: 'moon' }, 'out in the snow'],
    },
  },
  {
    path: '/jobs/:id/meter',
    refused: {
      'an empty form': [422, {}],
      'a meter that is not there': [422, { ...now, meter: 'warp', zero: '0.27' }, '0.27'],
      'a job that has moved on': [409, own(stale), 'The yellow one', '600 Ω'],
      'a name without end': [422, own({ name: long }), long],
      'a range in words': [
        422,
        own({ top: ['a lot of ohms, more than anybody would think of'] }),
        'a lot of ohms, more than anybody would think of',
      ],
      'leads in words': [
        422,
        own({ zero: 'next to nothing' }),
        'next to nothing',
        'The yellow one',
      ],
    },
  },
  {
    path: '/jobs/:id/zeros',
    refused: {
      'nothing typed': [422, { ...now, check: unread }],
      words: [422, { ...now, check: unread, zero: 'next to nothing' }, 'next to nothing'],
      'words without end': [422, { ...now, check: unread, zero: long }, long],
      'a job that has moved on': [409, { ...stale, check: unread, zero: '0.27' }, '0.27'],
      'words beside a check that is read': [
        422,
        { ...now, check: read, zero: 'next to nothing' },
        'next to nothing',
      ],
    },
  },
  {
    path: '/jobs/:id/repairs',
    refused: {
      'an empty form': [422, {}],
      'a job that has moved on': [409, { ...stale, ...repair }, ...keptOfRepair],
      'a part that is not there': [
        422,
        { ...now, ...repair, parts: 'warp-drive' },
        ...keptOfRepair,
      ],
      'a failure of another part': [
        422,
        { ...now, ...repair, fault: 'warp.drive' },
        ...keptOfRepair,
      ],
      'a note without end': [
        422,
        { ...now, ...repair, note: long.repeat(3) },
        long.repeat(3),
        '12.50',
      ],
      'a price in words': [422, { ...now, ...repair, price: 'a fortune' }, 'a fortune'],
      'minutes in words': [422, { ...now, ...repair, minutes: 'an hour' }, 'an hour', '12.50'],
      'no word of what else it was': [
        422,
        { ...now, ...repair, parts: '-', cause: '?' },
        '?',
        ...keptOfRepair,
      ],
      'far too much of what else it was': [
        422,
        { ...now, ...repair, parts: '-', cause: long },
        long,
        ...keptOfRepair,
      ],
      'something else, on a job that has moved on': [
        409,
        { ...stale, ...repair, parts: '-', cause: 'A nest of mice' },
        'A nest of mice',
        ...keptOfRepair,
      ],
    },
  },
  {
    path: '/jobs/:id/repairs',
    at: 'repaired',
    refused: {
      'a repair that waits for its proof': [409, { ...stale, ...repair }, ...keptOfRepair],
    },
  },
  {
    path: '/jobs/:id/proofs',
    at: 'repaired',
    refused: {
      'nothing chosen': [422, { ...now, read: '148 V at the plug' }, '148 V at the plug'],
      'something else chosen': [422, { ...now, choice: 'perhaps' }],
      'words without end': [422, { ...now, choice: 'gone', read: long }, long],
      'a job that has moved on': [
        409,
        { ...stale, choice: 'gone', read: '148 V at the plug' },
        '148 V at the plug',
      ],
    },
  },
  {
    path: '/jobs/:id/proofs',
    refused: { 'no repair to prove': [409, { ...now, choice: 'gone', read: '148 V' }, '148 V'] },
  },
  {
    path: '/jobs/:id/repair-withdrawals',
    at: 'repaired',
    refused: { 'a job that has moved on': [409, stale] },
  },
  {
    path: '/jobs/:id/repair-withdrawals',
    refused: { 'no repair to take back': [409, now] },
  },
  {
    path: '/jobs/:id/particulars',
    refused: {
      'a name without end': [422, { ...now, ...names, customer: long }, long, 'TL2I-004417'],
      'a job that has moved on': [409, { ...stale, ...names }, 'TL2I-004417', 'Ada Quill'],
    },
  },
  {
    path: '/jobs/:id/stands',
    refused: {
      'nothing named': [422, now],
      'something that is not apart': [409, { ...now, setup: 'warp-drive' }],
    },
  },
  {
    path: '/jobs/:id/tries',
    at: 'phone',
    refused: {
      'nothing chosen': [422, now],
      'a way that is none': [422, { ...now, way: 'warp', choice: 'helped' }],
    },
  },
  {
    path: '/jobs/:id/mendings',
    at: 'phone',
    refused: {
      'nothing chosen': [422, { ...now, of: 'plug' }],
      'something that is not there': [422, { ...now, of: 'warp', choice: 'done' }],
    },
  },
  {
    path: '/jobs/:id/cut-offs',
    at: 'phone',
    refused: { 'a job that has moved on': [409, { ...stale, check: '' }] },
  },
  {
    path: '/jobs/:id/table',
    at: 'over',
    refused: {
      'words in a row': [422, { ...now, [ofTable]: 'a lot' }, 'a lot'],
      'far too much': [422, { ...now, [ofTable]: long }, long],
      'a job that has moved on': [409, { ...stale, [ofTable]: '365' }, '365'],
      'a row that is none': [409, { ...stale, 'typed.warp-drive': '365.1' }, '365.1'],
    },
  },
  {
    path: '/machines/:machine/check-over',
    refused: {
      'an empty form': [422, {}],
      'a name without end': [422, { ...over, by: long }, long, 'PL-0815'],
      'a plug that is none': [422, { ...over, scope: 'plug:__proto__' }, 'PL-0815', 'Ada'],
      'an air in words': [422, { ...over, air: 'biting cold' }, 'biting cold', 'Ada'],
      'an earlier one that is none': [422, { ...over, before: '999' }, '999', 'Ada'],
    },
  },
  {
    path: '/jobs/:id/photos',
    refused: { 'no picture': [422, {}] },
  },
  {
    path: '/jobs/:id/photo-removals',
    refused: { 'nothing named': [422, {}], 'one that is not there': [409, { photo: 99 }] },
  },
  {
    path: '/rates/:machine/left-out',
    at: 'counted',
    refused: {
      'an empty form': [422, {}],
      'a number in words': [
        422,
        { number: 'the red one, I think, or else the one after it', reason: 'misread' },
        'the red one, I think, or else the one after it',
        'misread',
      ],
      'a reason without end': [422, { number: '6', reason: long.repeat(3) }, long.repeat(3)],
      'one that is left out already': [
        409,
        { number: '5', reason: 'misread by a mile' },
        'misread by a mile',
      ],
    },
  },
  {
    path: '/rates/:machine/taken-in',
    refused: {
      'nothing named': [422, {}],
      'a number in words': [422, { number: 'abc' }, 'abc'],
      'one that was not confirmed': [422, { number: '999' }, '999'],
    },
  },
]
