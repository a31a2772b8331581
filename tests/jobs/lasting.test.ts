import { describe, expect, it } from 'vitest'
import { allowsFurtherTake } from '../../server/jobs/measuring/judged.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

describe('what is there the second time too', () => {
  const { checkKinds } = shippedKnowledge()
  const made = shippedCases().flatMap((kase) =>
    [...kase.checks.keys()].map((id) => ({
      lasting: checkKinds.get(id.split('.')[0]!)!.lasting ?? false,
      mayBeMadeAgain: allowsFurtherTake(kase, id),
      kind: id.split('.')[0]!,
    })),
  )

  it('is not looked at once more to prove the harm that it does', () => {
    const lasting = made.filter(({ lasting }) => lasting)
    expect(new Set(lasting.map(({ kind }) => kind)).size).toBeGreaterThan(10)
    expect(lasting.filter(({ mayBeMadeAgain }) => mayBeMadeAgain)).toEqual([])
  })

  it('but a spark, a sound or a reading may be', () => {
    const kinds = new Set(
      made.filter(({ mayBeMadeAgain }) => mayBeMadeAgain).map(({ kind }) => kind),
    )
    for (const kind of ['spark-on-tester', 'pump-listen', 'winding-resistance']) {
      expect(kinds).toContain(kind)
    }
  })
})
