import { expect, it } from 'vitest'
import { askedTogether, broughtIn } from '../../server/diagnosis/model/asking.ts'
import type { Model } from '../../server/diagnosis/model/model.ts'
import { minutesOf, standsAfter, wayTo } from '../../server/diagnosis/model/stands.ts'

const check = (id: string) => ({ id, minutes: 1, setups: [], outcomes: ['a', 'b'], chances: [] })
const model: Model = {
  tree: { top: 'top', gates: new Map() },
  cutSets: [],
  checks: [check('ask-one'), check('ask-two'), check('look')],
}
const { checks } = askedTogether(model, (id) => id.startsWith('ask-'), 4)
const [one, two, look] = [checks[0]!, checks[1]!, checks[2]!]

/** Minutes of the way to each check, one after the other, from a machine just brought in. */
function ways(...order: typeof checks): number[] {
  let stands = broughtIn
  return order.map((each) => {
    const minutes = minutesOf(wayTo(each, stands))
    stands = standsAfter(each, stands)
    return minutes
  })
}

it('costs nothing to ask while nothing but questions was made', () => {
  expect(ways(one, two, look)).toEqual([0, 0, 0])
})

it('costs the minutes of a call to ask after anything else, once for all questions in a row', () => {
  expect(ways(look, one, two)).toEqual([0, 4, 0])
  expect(ways(one, look, two, look, one)).toEqual([0, 0, 4, 0, 4])
})
