import { describe, expect, it } from 'vitest'
import type { JobEvent } from '../../server/jobs/record/events.ts'
import { asItStands } from '../../server/jobs/standing/as-it-stands.ts'
import { type Step, wayTo } from '../../server/jobs/standing/way/way-to.ts'
import { noToolHere } from '../../server/jobs/words/skip-reasons.ts'
import type { CheckCard, SetupCard } from '../../server/knowledge/case.ts'

const setup = (id: string, more: Partial<SetupCard> = {}): SetupCard => ({
  id,
  do: `Take off the ${id}.`,
  minutes: 2,
  undo: { do: `Put the ${id} back.`, minutes: 1 },
  ...more,
})
const hood = setup('hood')
const plug = setup('plug')
const coil = setup('coil')
const stopWire = setup('stop wire', { once: true, stopOff: true })
const { undo: _, ...heat } = setup('heat', { once: true })
const { undo: _undo, ...warmth } = setup('warmth', {
  minutes: 15,
  lasts: { do: 'It is still warm.', minutes: 8 },
})
const { undo: __, ...outside } = setup('outside')

const cover = [hood, plug, coil, stopWire]
const check = (id: string, setups: readonly SetupCard[], more: Partial<CheckCard> = {}) =>
  ({ id, title: id, minutes: 1, setups, forbids: [], ...more }) as CheckCard
const checks = new Map(
  [
    check('winding', [hood, plug]),
    check('coil', [hood, coil]),
    check('through the harness', [hood, coil], { forbids: [plug] }),
    check('pull', [], { forbids: cover }),
    check('look', []),
    check('stop', [hood, stopWire]),
    check('hot', [outside, heat]),
    check('hot coil', [heat, { ...coil, once: true }], { forbids: [plug, coil] }),
    check('warm', [warmth], { minutes: 3 }),
    check('warm coil', [warmth, { ...coil, once: true }], { minutes: 1 }),
    check('spray', [warmth], { cools: true }),
    check('long', [hood], { minutes: 4 }),
    check('owner', [], { asked: true }),
  ].map((card) => [card.id, card]),
)

const manner = { warmth: { kind: 'as the air' } } as const
const made = (name: string, kind: 'reading' | 'take' | 'correction' = 'reading'): JobEvent => ({
  kind,
  check: name,
  typed: '',
  touches: [{ kind: 'could-not-tell' }],
  manner,
})
const skip = (name: string, reason = 'seized'): JobEvent => ({
  kind: 'skipped',
  check: name,
  reason,
})

const after = (...happened: JobEvent[]) => {
  const events = happened.map((event) => ({ event, at: new Date(0) }))
  return asItStands({ checks }, { id: 1, version: events.length, events })
}
const off = (...happened: JobEvent[]) => after(...happened).setups.map(({ id }) => id)
const unsure = (...happened: JobEvent[]) => after(...happened).unsure.map(({ id }) => id)
const way = (to: string, ...happened: JobEvent[]) => {
  const { putBack, make, keep } = wayTo(after(...happened), checks.get(to)!)
  const steps = (all: readonly Step[]) =>
    all.map(({ setup, unsure }) => `${setup.id}${unsure ? '?' : ''}`).join(', ')
  return { putBack: steps(putBack), make: steps(make), keep: keep.map(({ id }) => id).join(', ') }
}

describe('the machine as it stands', () => {
  it('came in whole', () => expect(off()).toEqual([]))

  it('keeps what the checks took apart, until one of them has it put back', () => {
    expect(off(made('winding'))).toEqual(['hood', 'plug'])
    expect(off(made('winding'), made('coil'))).toEqual(['hood', 'plug', 'coil'])
    expect(off(made('winding'), made('through the harness'))).toEqual(['hood', 'coil'])
    expect(off(made('winding'), made('look'))).toEqual(['hood', 'plug'])
    expect(off(made('winding'), made('pull'))).toEqual([])
  })

  it('is as a check left it that was made once more', () => {
    expect(off(made('winding'), made('pull'), made('winding', 'take'))).toEqual(['hood', 'plug'])
  })

  it('has neither apart what a check puts back itself, nor warm what fades', () => {
    expect(off(made('stop'))).toEqual(['hood'])
    expect(off(made('hot'))).toEqual(['outside'])
    expect(off(made('coil'), made('hot coil'))).toEqual(['hood'])
  })

  it.each<[string, JobEvent]>([
    ['correcting', made('coil', 'correction')],
    ['withdrawing', { kind: 'withdrawn', check: 'winding' }],
    ['accepting', { kind: 'accepted', check: 'winding' }],
    ['taking another meter', { kind: 'meter', meter: { kind: 'class', id: 'x' }, zero: null }],
    ['asking the owner', made('owner')],
    ['writing down a repair', { kind: 'repaired', parts: ['coil'] }],
    ['a check that the knowledge lost', made('gone')],
  ])('is not touched by %s', (_, event) => {
    expect(off(made('winding'), event)).toEqual(['hood', 'plug'])
    expect(unsure(made('winding'), event)).toEqual([])
  })

  it('is anybody\u2019s guess where a check was skipped: what it needs may be off, what it forbids back', () => {
    expect(off(made('winding'), skip('through the harness'))).toEqual(['hood'])
    expect(unsure(made('winding'), skip('through the harness'))).toEqual(['plug', 'coil'])
    expect(unsure(skip('owner'))).toEqual([])
    expect(unsure(skip('hot'))).toEqual(['outside'])
  })

  it('stays as it was where the tool was missing, but for a stop circuit', () => {
    expect(off(made('winding'), skip('through the harness', noToolHere))).toEqual(['hood', 'plug'])
    expect(unsure(made('winding'), skip('through the harness', noToolHere))).toEqual([])
    expect(unsure(skip('stop', noToolHere))).toEqual(['stop wire'])
  })

  it('is known again once a check had it put back, or made', () => {
    expect(unsure(skip('coil'), made('look'))).toEqual(['hood', 'coil'])
    expect(unsure(skip('coil'), made('pull'))).toEqual([])
    expect(unsure(skip('coil'), made('winding'))).toEqual(['coil'])
  })

  it('is what somebody says who looked', () => {
    const back: JobEvent = { kind: 'back', setup: 'plug' }
    expect(off(made('winding'), back)).toEqual(['hood'])
    expect(unsure(made('winding'), skip('through the harness'), back)).toEqual(['coil'])
  })

  it('may stand as before where a repair is taken back with a proof that nobody made', () => {
    const repaired: JobEvent = { kind: 'repaired', parts: ['coil'] }
    const proved: JobEvent = { kind: 'proved', gone: true, reopened: [] }
    const back: JobEvent = { kind: 'repair withdrawn' }
    expect(off(made('winding'), repaired, proved, back)).toEqual([])
    expect(unsure(made('winding'), repaired, proved, back)).toEqual(['hood', 'plug'])
    // Taken back before anybody proved it, it has moved nothing.
    expect(off(made('winding'), repaired, back)).toEqual(['hood', 'plug'])
    expect(unsure(made('winding'), repaired, proved, made('winding'), repaired, back)).toEqual([])
  })

  it.each([true, false])('is together again once a repair was tried, gone: %s', (gone) => {
    const repaired: JobEvent = { kind: 'repaired', parts: ['coil'] }
    const proved: JobEvent = { kind: 'proved', gone, reopened: ['winding'] }
    expect(after(made('winding'), repaired, skip('coil'), proved)).toEqual({
      setups: [],
      unsure: [],
      fading: [],
    })
  })
})

describe('the way to a check', () => {
  it('takes off what it needs', () => {
    expect(way('winding')).toEqual({ putBack: '', make: 'hood, plug', keep: '' })
  })

  it('puts back what is in its way, the last first, and nothing else', () => {
    expect(way('pull', made('winding')).putBack).toBe('plug, hood')
    expect(way('through the harness', made('winding'))).toEqual({
      putBack: 'plug',
      make: 'coil',
      keep: 'hood',
    })
    expect(way('look', made('winding'))).toEqual({ putBack: '', make: '', keep: 'plug, hood' })
  })

  it('takes off again what was put back', () => {
    expect(way('winding', made('winding'), made('pull')).make).toBe('hood, plug')
    expect(way('winding', made('winding')).make).toBe('')
  })

  it('makes anew what the same check put back itself, or what faded', () => {
    expect(way('stop', made('stop')).make).toBe('stop wire')
    expect(way('hot', made('hot')).make).toBe('heat')
  })

  const still = (to: string, ...happened: JobEvent[]) =>
    wayTo(after(...happened), checks.get(to)!).still.map(({ id }) => id)

  it('makes what lasts a while once for all that is made in that while', () => {
    expect(way('warm', made('warm')).make).toBe('')
    expect(still('warm', made('warm'))).toEqual(['warmth'])
    // Each has 3 of 8 minutes, or 4 with the coil taken off and put on.
    expect(still('warm', made('warm'), made('warm'))).toEqual([])
    expect(way('warm', made('warm'), made('warm')).make).toBe('warmth')
    expect(still('warm coil', made('warm'))).toEqual(['warmth'])
    expect(still('warm', made('warm'), made('warm coil'))).toEqual([])
  })

  it('counts other work in that while, and puts nothing back for it', () => {
    expect(still('warm', made('warm'), made('look'))).toEqual(['warmth'])
    // The hood comes off in 2 minutes, and 4 more are spent under it.
    expect(still('warm', made('warm'), made('long'))).toEqual([])
    expect(off(made('warm'))).toEqual([])
    expect(way('pull', made('warm')).putBack).toBe('')
    expect(still('warm', made('warm'), { kind: 'proved', gone: false, reopened: [] })).toEqual([])
    expect(still('owner', made('warm'))).toEqual([])
    expect(still('spray', made('warm'))).toEqual(['warmth'])
    expect(still('warm', made('spray'))).toEqual([])
  })

  it('has back before the run what is to come apart after it', () => {
    expect(way('hot coil', made('coil'))).toEqual({
      putBack: 'coil',
      make: 'heat, coil',
      keep: 'hood',
    })
  })

  it('has nothing put back that leaves nothing behind', () => {
    expect(way('pull', made('hot')).putBack).toBe('')
  })

  it('leaves everything as it is for a question', () => {
    expect(way('owner', made('winding'), skip('coil'))).toEqual({ putBack: '', make: '', keep: '' })
  })

  it('asks first, where a skipped check may have done it already', () => {
    expect(way('pull', made('winding'), skip('coil')).putBack).toBe('coil?, plug, hood')
    expect(way('coil', skip('coil')).make).toBe('hood?, coil?')
    expect(way('look', skip('coil')).putBack).toBe('')
  })

  it('has a stop circuit made whole that may be apart, whatever it is about', () => {
    expect(way('look', skip('stop')).putBack).toBe('stop wire?')
    expect(way('pull', skip('stop'), made('look')).putBack).toBe('hood?')
    expect(way('stop', skip('stop')).make).toBe('hood?, stop wire?')
  })
})
