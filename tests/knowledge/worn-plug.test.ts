import { expect, it } from 'vitest'
import { chanceThatFailed, shippedJob } from '../support/shipped-job.ts'

const chanceOfThePlug = (complaint: string, readings: Readonly<Record<string, string>>) =>
  chanceThatFailed(shippedJob({ machine: 'pedlar-1c', complaint }, readings), 'plug')

it('has an answer for a plug worn wide, which speaks for it where that is the trouble', () => {
  const before = chanceOfThePlug('spark-no-start', {})
  expect(chanceOfThePlug('spark-no-start', { 'plugs-look': 'worn' })).toBeGreaterThan(2 * before)
  // It still sparks: no more than half of them would be put down to it.
  const dead = chanceOfThePlug('no-spark', {})
  const worn = chanceOfThePlug('no-spark', { 'plugs-look': 'worn' })
  expect(worn).toBeLessThan(1.3 * dead)
  expect(worn).toBeLessThan(chanceOfThePlug('no-spark', { 'plugs-look': 'all-bad' }) / 2)
})
