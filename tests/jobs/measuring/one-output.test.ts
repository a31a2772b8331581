import { expect, it } from 'vitest'
import { judgedReadings } from '../../../server/jobs/measuring/judged.ts'
import { meterAtHand } from '../../../server/jobs/measuring/meter-at-hand.ts'
import type { JobEvent } from '../../../server/jobs/record/events.ts'
import { fold } from '../../../server/jobs/record/fold.ts'
import { readWords } from '../../../server/jobs/words/reading-words.ts'
import { caseFor } from '../../../server/knowledge/instantiate.ts'
import { shippedKnowledge } from '../../support/knowledge.ts'

it('an answer that a machine with one output no longer offers keeps what it meant on an old job', () => {
  const knowledge = shippedKnowledge()
  const kase = caseFor(knowledge, 'pedlar-1c', 'no-spark')
  const card = kase.checks.get('plugs-look')!
  const conditions = { where: 'bench', air: 20, engine: 'cold', tools: [] } as const
  const touches = [{ kind: 'answer', answer: 'one-bad' }] as const
  const events = [
    { kind: 'opened', machine: 'pedlar-1c', complaint: 'no-spark', conditions, note: '' },
    { kind: 'reading', check: card.id, typed: '', touches, manner: {} },
  ] as unknown as JobEvent[]
  const folded = fold(events.map((event) => ({ event, at: new Date(0) })))
  const judged = judgedReadings(kase, folded, meterAtHand(knowledge, folded), knowledge.owner)
  const plugs = judged.get(card.id)!
  expect(plugs.likelihoods).toEqual(card.outcomes.map((each) => (each === 'all-bad' ? 1 : 0)))
  expect(readWords(card, plugs)).toContain('black, oily, cracked or bridged')
})
