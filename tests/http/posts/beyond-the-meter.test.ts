import { describe, expect, it } from 'vitest'
import { caseFor } from '../../../server/knowledge/instantiate.ts'
import { appForAll, shippedKnowledge, twin } from '../../support/app.ts'
import { openForm, post } from '../../support/job.ts'
import { textIn, valueIn } from '../../support/page.ts'
import { plain } from '../../support/plain.ts'
import { refusalIn } from '../../support/refusal.ts'

const { http } = appForAll()
const knowledge = shippedKnowledge()

async function opened(
  machine: string,
  complaint: string,
  changes: Record<string, string | string[]>,
) {
  const form = openForm(caseFor(knowledge, machine, complaint), changes)
  return (await post(http(), '/jobs', form).expect(303)).headers.location as string
}

const lights = ['fernslade-1p', 'dead-lights', 'lighting-volts.lighting.lamp-plug'] as const
const ground = [
  'brackenway-1b',
  'cuts-out',
  'ground-resistance.igniter-ground.igniter-plug',
] as const

describe('a reading beyond what the meter can show', () => {
  it.each([
    [
      'hand',
      lights,
      '5 kV',
      '5 kV is more than this meter can show: on AC volts it ends at 400 V.',
    ],
    [
      'pocket',
      lights,
      '501',
      '501 V is more than this meter can show: on AC volts it ends at 500 V.',
    ],
    ['hand', ground, '41M', 'on ohms it ends at 40 MΩ. Over its range it shows OL.'],
    [
      'pocket',
      ground,
      '0.2 3M 0.2',
      '3 MΩ is more than this meter can show: on ohms it ends at 2 MΩ.',
    ],
  ] as const)(
    'is asked for once more, and taken when it is sent as it is: on a %s meter',
    async (meter, [machine, complaint, check], typed, says) => {
      const job = await opened(machine, complaint, { meter })
      const form = { version: 1, check, typed }
      const answer = await post(http(), `${job}/readings`, form).expect(422)
      expect(plain(refusalIn(answer).says.join(' '))).toContain(says)
      expect(valueIn(answer.text, 'typed')).toBe(typed)
      const kept = valueIn(answer.text, 'kept')
      await post(http(), `${job}/readings`, { ...form, kept }).expect(303)
    },
  )

  it('is none where it lies at the top of its largest range, or the meter shows OL', async () => {
    for (const typed of ['40M', 'OL']) {
      const [machine, complaint, check] = ground
      const job = await opened(machine, complaint, { meter: 'hand' })
      await post(http(), `${job}/readings`, { version: 1, check, typed }).expect(303)
    }
  })

  it('is asked for once more as one more touch, too', async () => {
    const [machine, complaint, check] = ground
    const job = await opened(machine, complaint, { meter: 'hand' })
    await post(http(), `${job}/readings`, { version: 1, check, typed: '0.2' }).expect(303)
    const touch = { version: 2, check, typed: '50M' }
    const answer = await post(http(), `${job}/takes`, touch).expect(422)
    expect(plain(textIn(answer.text))).toContain('50 MΩ is more than this meter can show')
    await post(http(), `${job}/takes`, { ...touch, kept: valueIn(answer.text, 'kept') }).expect(303)
  })

  it('is taken from an owner on the phone as well, who says it once more', async () => {
    const [machine, complaint, check] = ground
    const kit = { who: 'owner', 'kit-set': 'along', 'kit-along': ['meter', 'light', 'partner'] }
    const job = await opened(machine, complaint, kit)
    const form = { version: 1, check, typed: '3M' }
    const answer = await post(http(), `${job}/readings`, form).expect(422)
    await post(http(), `${job}/readings`, { ...form, kept: valueIn(answer.text, 'kept') }).expect(
      303,
    )
  })

  it('is asked for once more in the row of a table', async () => {
    const begun = { scope: 'loose:stator-plate', air: '20', meter: 'pocket', zero: '0.2' }
    const { headers } = await post(http(), `/machines/${twin().id}/check-over`, begun).expect(303)
    const row = 'winding-resistance.exciter-start.exciter-plug'
    const form = { version: 2, [`typed.${row}`]: '3M' }
    const answer = await post(http(), `${headers.location}/table`, form).expect(422)
    expect(plain(textIn(answer.text))).toContain('3 MΩ is more than this meter can show')
    const kept = { [`kept.${row}`]: valueIn(answer.text, `kept.${row}`) }
    await post(http(), `${headers.location}/table`, { ...form, ...kept }).expect(303)
  })
})
