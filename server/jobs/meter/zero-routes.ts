import type { FastifyInstance } from 'fastify'
import { textOf } from '../../web/fields.ts'
import { type Beside, takes } from '../page/takes.ts'
import { readZero } from '../posts/zero.ts'
import type { JobParts } from '../record/parts.ts'

/** The leads zeroed on the page of the check that they matter for: `POST /jobs/:id/zeros`. */
export async function zeroRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  takes(
    app,
    parts,
    'zeros',
    (body, { folded }) => {
      const typed = textOf(body, 'zero').trim().slice(0, 80)
      const zero = readZero(typed) ?? 'Hold the probes together and enter what the meter shows.'
      if (typeof zero === 'string') return { asked: { zeroRefused: { typed, sentence: zero } } }
      return { kind: 'meter', meter: folded.meter.choice, zero }
    },
    stillToMake,
  )
}

const stillToMake: Beside = (body, { kase, folded }) => {
  const check = textOf(body, 'check')
  return kase.checks.has(check) && !folded.readings.has(check) ? { check } : {}
}
