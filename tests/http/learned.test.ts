import { describe, expect, it } from 'vitest'
import type { Model } from '../../server/diagnosis/model/model.ts'
import { confirmedRepairs, countedBefore } from '../../server/jobs/record/confirmed.ts'
import { withRates } from '../../server/jobs/standing/rates/with-rates.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Store } from '../../server/store/open.ts'
import { answerOn } from '../support/answer-on.ts'
import { type Http, readyApp, shippedKnowledge } from '../support/app.ts'
import { confirm, runningClock, singleFaults } from '../support/confirmed.ts'
import { faultOf } from '../support/hidden-fault.ts'
import { openJob } from '../support/job.ts'
import { typicalWalk } from '../support/oracles/typical-walk.ts'
import { textIn } from '../support/page.ts'

const kase = caseFor(shippedKnowledge(), 'pedlar-1c', 'no-spark')
const faults = singleFaults(kase)
const usual = 'igniter.dead'
const odd = [
  ...['coil.primary-shorted', 'wires-coil.grounded', 'pickup.weak'],
  ...['cap.leaking', 'flywheel.weak-magnets'],
]

/** Where one ends who makes every check proposed, each coming out as this fault typically shows, and after how long. */
function walked(model: Model, fault: string) {
  const { end, minutes } = typicalWalk(model, faults.get(fault)!, new Set())
  return { minutes, parts: end.kind === 'named' ? end.parts.join() : end.kind }
}

/** The model of a job that is opened now. */
async function modelOf({ jobs }: Store): Promise<Model> {
  const repairs = confirmedRepairs(await jobs.confirmed())
  const counted = countedBefore({ stamp: repairs.length, repairs }, new Date(Date.UTC(2040, 0, 1)))
  const job = { id: 0, version: 1, events: [], counted }
  return withRates(shippedKnowledge(), { job, kase }, kase.model)
}

async function confirmTimes(http: Http, times: number, faultsInTurn: readonly string[]) {
  for (let i = 0; i < times; i += 1) {
    await confirm(http, kase, faultsInTurn[i % faultsInTurn.length]!)
  }
}

/** How many minutes the checks of a job on this fault take over the pages, which must name it; without set-ups. */
async function minutesOverThePages(http: Http): Promise<number> {
  const fault = faultOf(kase, faults.get(usual)!)
  const job = await openJob(http, kase)
  for (let minutes = 0; ; ) {
    const check = await answerOn(http, job, fault.typical)
    if (check !== null) {
      minutes += kase.checks.get(check)!.minutes
      continue
    }
    const text = textIn((await http.get(job).expect(200)).text)
    expect(text).toContain(`The fault is in the ${fault.part}`)
    return minutes
  }
}

describe('a shop that has seen forty of one machine', () => {
  it('is asked in a better order than on its first day, and one odd year does not undo that', async () => {
    const { http, store } = await readyApp({ now: runningClock() })
    const firstDay = { model: await modelOf(store), minutes: await minutesOverThePages(http) }
    expect(firstDay.model).toBe(kase.model)

    await confirmTimes(http, 40, [usual])
    const forty = walked(await modelOf(store), usual)
    expect(forty.parts).toBe('igniter')
    const atFirst = walked(firstDay.model, usual).minutes
    expect(forty.minutes).toBeLessThan(atFirst / 2)
    expect(await minutesOverThePages(http)).toBeLessThan(firstDay.minutes)

    await confirmTimes(http, 10, odd)
    const afterwards = walked(await modelOf(store), usual)
    expect(afterwards.parts).toBe('igniter')
    expect(afterwards.minutes).toBeLessThan(atFirst / 2)
    expect(afterwards.minutes).toBeLessThan(forty.minutes + 15)
  }, 120_000)
})

describe('a shop that begins with an odd year', () => {
  it('still names every fault that was named before, the machines of the tables five minutes later or so', async () => {
    const { http, store } = await readyApp({ now: runningClock() })
    await confirmTimes(http, 10, odd)
    const model = await modelOf(store)
    let [before, after, weight] = [0, 0, 0]
    for (const [fault, cutSet] of faults) {
      const then = walked(kase.model, fault)
      const now = walked(model, fault)
      expect([fault, now.parts]).toEqual([fault, then.parts])
      const { prior } = kase.model.cutSets[cutSet]!
      before += prior * then.minutes
      after += prior * now.minutes
      weight += prior
    }
    expect(faults.size).toBeGreaterThan(30)
    expect(after / weight).toBeLessThan(before / weight + 6)
  }, 120_000)
})
