import { describe, expect, it } from 'vitest'
import { presentAfter } from '../../server/practice/after/present.ts'
import type { StoredRound } from '../../server/practice/record/events.ts'
import { roundStanding } from '../../server/practice/round/standing.ts'
import type { ToolWalk } from '../../server/practice/tool/walk.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const opened = {
  kind: 'opened',
  machine: 'pedlar-1c',
  complaint: 'no-spark',
  level: 'any',
  seed: 'spring',
  draw: 0,
  who: '',
} as const
const events = [opened, { kind: 'cannot-tell' } as const].map((event) => ({
  event,
  at: new Date(0),
}))
const stored: StoredRound = { id: 1, version: events.length, opened, events }
const standing = roundStanding(shippedKnowledge(), stored)!

/** The page of a round that ended with "cannot tell", where the tool named this part. */
const afterNaming = (part: string) => {
  const right = standing.hidden.parts.includes(part)
  const end: ToolWalk['end'] = { kind: 'named', parts: [part], probability: 0.91 }
  const page = presentAfter(standing, { steps: [], minutes: 12, together, end, right })
  return JSON.stringify(page)
}

/** The same where the tool could not tell these apart. */
function afterNobody(spent: number) {
  const group = ['exciter', 'igniter'].map((part) => ({ part, probability: 0.5 }))
  const end: ToolWalk['end'] = { kind: 'cannotSeparate', group }
  return presentAfter(
    { ...standing, minutes: spent },
    { steps: [], minutes: 12, together, end, right: false },
  )
}

const together = { back: [], minutes: 0, waited: 0 }

describe('a round once it is over', () => {
  const good = [...standing.kase.parts.keys()].find((id) => !standing.hidden.parts.includes(id))!

  it('says so where the tool named a good part', () => {
    expect(afterNaming(good)).toMatch(/at 91.%, and is wrong: that is not what had failed/)
    expect(afterNaming(good)).toMatch(/The tool thought that it could, and named a good part/)
    expect(afterNaming(good)).not.toMatch(/could not tell either|neither could the tool/)
  })

  it('is no mistake of whoever could not tell where the tool could not either', () => {
    const early = afterNobody(0)
    expect(early.stamp).toBe('Not counted')
    expect(early.says).toContain('In the end the tool could not tell either')
    expect(afterNobody(12).stamp).toBe('Right')
    expect(afterNaming(standing.hidden.parts[0]!)).toContain('"stamp":"Not right"')
  })

  it('leaves the tool its name where that was right', () => {
    const [part] = standing.hidden.parts
    expect(afterNaming(part!)).toMatch(/The tool named the part, as stands below/)
    expect(afterNaming(part!)).not.toMatch(/is wrong/)
  })
})
