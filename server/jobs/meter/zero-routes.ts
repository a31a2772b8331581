import type { FastifyInstance } from 'fastify'
import { textOf } from '../../web/fields.ts'
import { type Around, takes } from '../page/takes.ts'
import { readZero } from '../posts/zero.ts'
import type { JobParts } from '../record/parts.ts'
import { movedOn } from '../words/moved-on.ts'

/** The leads zeroed on the page of the check that they matter for: `POST /jobs/:id/zeros`. */
export async function zeroRoutes(app: FastifyInstance, parts: JobParts): Promise<void> {
  takes(
    app,
    parts,
    'zeros',
    (body, { folded }) => {
      const typed = typedIn(body)
      const zero = readZero(typed) ?? 'Hold the probes together and enter what the meter shows.'
      if (typeof zero === 'string') return { asked: { zeroRefused: { typed, sentence: zero } } }
      return { kind: 'meter', meter: folded.meter.choice, zero }
    },
    {
      beside: stillToMake,
      again: (body) => ({ zeroRefused: { typed: typedIn(body), sentence: movedOn } }),
    },
  )
}

const typedIn = (body: unknown) => textOf(body, 'zero').trim()

const stillToMake: Around['beside'] = (body, { kase, folded }) => {
  const check = textOf(body, 'check')
  return kase.checks.has(check) && !folded.readings.has(check) ? { check } : {}
}
