import { describe, expect, it } from 'vitest'
import { cardTools } from '../../server/cards/drawing/tools.ts'
import { numbersOf } from '../../server/cards/words/numbers.ts'
import { stageViews } from '../../server/cards/words/stages.ts'
import type { Ending, Outline, Split, Stage } from '../../server/diagnosis/outline/outline.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const kase = caseFor(knowledge, 'pedlar-1c', 'no-spark')
const tools = cardTools(knowledge).find(({ id }) => id === 'along')!

const ending: Ending = {
  kind: 'ending',
  end: { kind: 'named', parts: ['cap'], probability: 0.95 },
  explanations: [],
  sure: [],
  before: 0.9,
  after: 0.95,
  suspects: [{ part: 'cap', probability: 0.95 }],
}

/** One check after the other, each with one answer. */
const inTurn = ([check, ...others]: readonly string[]): Stage =>
  check === undefined
    ? ending
    : ({ kind: 'split', check, answers: [{ outcome: 0, next: inTurn(others) }] } satisfies Split)

function titlesOf(checks: readonly string[]): string[] {
  const first = inTurn(checks)
  const titles: string[] = []
  let now = stageViews({ knowledge, kase, tools }, { first } as Outline, numbersOf(first))
  while (now.kind === 'step') {
    titles.push(now.check.title)
    now = now.answers[0]!.next
  }
  return titles
}

describe('a check that a pocket card has made again on the same way', () => {
  it('is called so, and only the second time', () => {
    const spark = 'spark-stop-at-plug'
    const [first, look, second] = titlesOf([spark, 'cap-look.cap', spark])
    expect(first).toBe('Spark at the plugs with the stop circuit unplugged')
    expect(look).not.toContain('Once more')
    expect(second).toBe('Once more: spark at the plugs with the stop circuit unplugged')
  })
})
