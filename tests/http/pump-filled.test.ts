import { describe, expect, it } from 'vitest'
import { type Http, readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'

const kit = ['plug-wrench', 'old-plugs', 'spark-tester', 'light']

/** All that is said of a check, or of a way home. */
const said = (http: Http, job: string, what: string) => wordsOn(http, `${job}${what}&line=99`)

describe('a pump that must not run dry', () => {
  it.each([
    ['pedlar-1c', 'single', /pump full of water/],
    ['freshet-4d', 'one', /pump full of water/],
    ['ferrymere-3t', 'top', /leg in the water, its primer bulb squeezed firm/],
  ])(
    'of %s is spoken of where it may run, and not for a few pulls that cannot start it',
    async (machine, output, pump) => {
      const { http } = await readyApp()
      const job = await onPhone(http, caseOf(machine, 'no-spark'), kit)
      const cranked = await said(http, job, `?check=spark-on-tester.${output}`)
      expect(cranked).toContain('Do you see a blue spark each time?')
      expect(cranked).not.toMatch(/full of water|in (the )?water/)
      expect(await said(http, job, '?check=reseat-connectors')).toMatch(pump)
      expect(await said(http, job, '/home?way=controls-home')).toMatch(pump)
      await post(http, `${job}/readings`, {
        version: 1,
        check: 'ask-controls',
        choice: 'off',
      }).expect(303)
      const trial = await said(http, job, '?')
      expect(trial).toMatch(/put right:.*try it:/)
      expect(trial.slice(trial.lastIndexOf('try it:') - 200)).toMatch(pump)
    },
  )

  it('is wet before a starter turns it for seconds', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, caseOf('ferrymere-3t', 'hard-start-cold'), kit)
    const words = await said(http, job, '?check=cranking-speed')
    expect(words).toContain('turn it with the starter for five seconds')
    expect(words).toContain('the plate above its propeller is under water')
  })
})
