import { describe, expect, it } from 'vitest'
import { chanceThatFailed, shippedJob } from '../../support/shipped-job.ts'

describe('touches of leads that stay clipped on', () => {
  const job = { machine: 'larkfell-2i', complaint: 'no-spark' }
  const check = 'peak-voltage.exciter-start.igniter-plug'
  const read = (typed: string) => shippedJob(job, { [check]: typed })

  it('count as one: three times nothing says little more than once', () => {
    const [once, thrice] = [read('0.000'), read('0.000 0.000 0.000')]
    expect(thrice.judged.get(check)!.furtherTakes).toEqual([])
    const odds = (standing: typeof once) => {
      const p = chanceThatFailed(standing, 'exciter-start')
      return p / (1 - p)
    }
    expect(odds(thrice)).toBeGreaterThanOrEqual(odds(once))
    expect(odds(thrice)).toBeLessThan(1.5 * odds(once))
  })

  it('are takes of their own where probes are held anew', () => {
    const ohms = 'winding-resistance.exciter-start.igniter-plug'
    const thrice = shippedJob(job, { [ohms]: '365 365 365' })
    expect(thrice.judged.get(ohms)!.furtherTakes).toHaveLength(2)
  })
})

describe('three pairs of legs', () => {
  const job = { machine: 'haulmoor-1e', complaint: 'not-charging' }
  const check = 'leg-volts.charging.rectifier-plug'

  it('accuse the winding where one is off, and leave it where all are alike', () => {
    const [alike, odd] = ['60 59 61', '60 45 61'].map((typed) =>
      shippedJob(job, { [check]: typed }),
    )
    expect(chanceThatFailed(alike!, 'charging')).toBeLessThan(0.1)
    expect(chanceThatFailed(odd!, 'charging')).toBeGreaterThan(
      3 * chanceThatFailed(alike!, 'charging'),
    )
  })
})
