import { setImmediate } from 'node:timers/promises'
import { expect, it } from 'vitest'
import { allFits } from '../../server/knowledge/fits.ts'
import { drawAhead } from '../../server/knowledge/instantiate/ahead.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { shippedKnowledge } from '../support/knowledge.ts'

const fits = allFits(shippedKnowledge())

/** Knowledge of which nothing is drawn out yet, and that says how many cases are. */
function undrawn() {
  const { checkKinds, ...rest } = shippedKnowledge()
  let looks = 0
  const knowledge: Knowledge = {
    ...rest,
    get checkKinds() {
      looks += 1
      return checkKinds
    },
  }
  const looksFor = (act: () => void) => {
    const before = looks
    act()
    return looks - before
  }
  const drawn = () =>
    fits.filter(
      ({ machine, complaint }) =>
        looksFor(() => caseFor(knowledge, machine.id, complaint.id)) === 0,
    ).length
  return { knowledge, drawn }
}

it('every case is drawn out before somebody asks for it', async () => {
  const { knowledge, drawn } = undrawn()
  await drawAhead(knowledge, () => false)
  expect(fits.length).toBeGreaterThan(20)
  expect(drawn()).toBe(fits.length)
})

it('everybody else has a turn before each of them', async () => {
  const { knowledge } = undrawn()
  let turns = 0
  let ended = false
  const others = (async () => {
    for (; !ended; turns += 1) await setImmediate()
  })()
  const turnsBefore: number[] = []
  await drawAhead(knowledge, () => turnsBefore.push(turns) > 6)
  ended = true
  await others
  expect(turnsBefore).toHaveLength(7)
  expect(new Set(turnsBefore).size).toBe(7)
})

it('none is drawn out once the server has ended', async () => {
  const { knowledge, drawn } = undrawn()
  let asked = 0
  await drawAhead(knowledge, () => {
    asked += 1
    return asked > 2
  })
  expect(asked).toBe(3)
  expect(drawn()).toBe(2)
})
