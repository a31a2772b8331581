import { describe, expect, it } from 'vitest'
import { presentSheet } from '../../server/jobs/paper/present.ts'
import { presentReadings } from '../../server/jobs/readings/present.ts'
import type { JobEvent } from '../../server/jobs/record/events.ts'
import { fold } from '../../server/jobs/record/fold.ts'
import { standingOf } from '../../server/jobs/standing/standing.ts'
import { parseTouches } from '../../server/measure/reading/parse-touches.ts'
import { shippedJob } from '../support/shipped-job.ts'

const job = { machine: 'haulmoor-1e', complaint: 'no-spark', tools: ['multimeter'] }
/** Through the plug of the magneto and the wires behind it. */
const far = 'winding-resistance.exciter.igniter-plug'
/** With that plug apart. */
const near = 'winding-resistance.exciter.magneto-plug'
/** Elsewhere, with the same plug joined. */
const elsewhere = 'primary-resistance.coil.igniter-plug'

/** Read through the harness, then what else was read, then once more through the harness. */
function takenAgain(typed: string, between: string, other: string, again: string) {
  const before = shippedJob(job, { [far]: typed, [between]: other })
  const parsed = parseTouches(again, before.kase.checks.get(far)!.measurand!.quantity)
  if (!parsed.ok) throw new Error(parsed.problem)
  const take: JobEvent = { kind: 'take', check: far, typed: again, touches: parsed.touches }
  const events = [...before.job.events, { event: take, at: new Date(0) }]
  const stored = { id: 1, version: events.length, events }
  return standingOf(before.knowledge, { job: stored, folded: fold(events), kase: before.kase })
}

const good = '600'
const notes = (standing: ReturnType<typeof takenAgain>) =>
  presentReadings(standing)[0]!.notes.join(' ')

describe('a take made after a connector on its way was apart', () => {
  it('does not turn the reading from before, and says why', () => {
    const { judged, ...standing } = takenAgain('OL', near, good, good)
    expect(judged.get(far)).toMatchObject({ reading: { kind: 'over' }, furtherTakes: [] })
    const says =
      /^After the .+ had been apart it came back as “600\sΩ”\. .*this take weighs nothing/
    expect(notes({ ...standing, judged })).toMatch(says)
    expect(notes({ ...standing, judged })).not.toContain('touch again')
    const sheet = presentSheet({ ...standing, judged })
    expect(sheet.readings[0]!.means).toMatch(says)
  })

  it('is one more take where it comes out as before', () => {
    const standing = takenAgain('OL', near, good, 'OL')
    expect(standing.judged.get(far)!.furtherTakes).toHaveLength(1)
    expect(notes(standing)).not.toContain('had been apart')
  })

  it('is all there is where it could not be told before', () => {
    const { judged } = takenAgain('?', near, good, good)
    expect(judged.get(far)!.reading).toEqual({ kind: 'value', value: 600 })
  })

  it('is not asked for', () => {
    const asksAgain = (other: string, typed: string) =>
      shippedJob(job, { [far]: 'OL', [other]: typed }).walk.proposals.some(
        ({ check }) => check === far,
      )
    expect(asksAgain(elsewhere, '1.2')).toBe(true)
    expect(asksAgain(near, good)).toBe(false)
  })

  it('settles with the reading as ever where nothing on its way was apart', () => {
    const { judged } = takenAgain('OL', elsewhere, '1.2', good)
    expect(judged.get(far)!.reading).toEqual({ kind: 'value', value: 600 })
  })
})
