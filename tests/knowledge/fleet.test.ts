import { describe, expect, it } from 'vitest'
import { fleet, type Tally, together } from '../bench/fleet.ts'
import { shippedCases } from '../support/knowledge.ts'

const cases = shippedCases()

/** Few, so that it is quick; `npm run bench` prints more of them, complaint by complaint. */
const walks = 4
const seed = 5

describe('over simulated jobs on every complaint and machine', () => {
  const tallies = cases.map((kase) => fleet(kase, walks, seed, ['tool', 'chart', 'paper']))
  const tool = together(tallies.map((each) => each.tool))
  const chart = together(tallies.map((each) => each.chart))
  const paper = together(tallies.map((each) => each.paper))
  const share = (count: number, { walks }: Tally) => count / walks

  it('the tool takes at most half the minutes of the fixed chart order', () => {
    expect(tool.walks).toBe(cases.length * walks)
    expect(chart.minutes).toBeGreaterThan(0)
    expect(tool.minutes / chart.minutes).toBeLessThan(0.5)
  })

  it('names the right part more often', () => {
    expect(share(tool.right, tool)).toBeGreaterThan(share(chart.right, chart))
    expect(share(tool.right, tool)).toBeGreaterThan(share(paper.right, paper))
  })

  it('and of the parts that it names one in twenty is wrong at most, where the paper is far worse', () => {
    const wrong = ({ right, wrong }: Tally) => wrong / (right + wrong)
    // Few walks: a wrong name in twenty-five is within two standard errors of one in thirty.
    expect(wrong(tool)).toBeLessThan(1 / 20)
    expect(wrong(tool)).toBeLessThan(wrong(paper) / 10)
    // The chart takes twice the minutes, and still names fewer.
    expect(tool.right + tool.wrong).toBeGreaterThan(chart.right + chart.wrong)
  })
})
