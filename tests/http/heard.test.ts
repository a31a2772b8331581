import { describe, expect, it } from 'vitest'
import { readyApp } from '../support/app.ts'
import { post } from '../support/job.ts'
import { caseOf, onPhone, wordsOn } from '../support/on-phone.ts'

describe('what an owner has heard of a danger', () => {
  it('is said in full once the engine has run, before hands go to it', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, caseOf('haulmoor-1e', 'cuts-out'), ['light', 'small-tools'])
    const next = `${job}?check=ground-look.igniter-ground&line=99`
    const burns = 'exhaust and engine burn you'
    expect(await wordsOn(http, next)).not.toContain(burns)
    const ran = { version: 1, check: 'shake-boxes', choice: 'stumbles' }
    await post(http, `${job}/readings`, ran).expect(303)
    expect(await wordsOn(http, next)).toContain(burns)
    // Once is enough.
    const asked = { version: 2, check: 'ask-before', choice: 'nothing' }
    await post(http, `${job}/readings`, asked).expect(303)
    expect(await wordsOn(http, next)).not.toContain(burns)
  })

  it('is nothing where a check was ended by its first question, or broken off', async () => {
    const { http } = await readyApp()
    const job = await onPhone(http, caseOf('brackenway-1b', 'no-spark'), ['light', 'small-tools'])
    const ended = { version: 1, check: 'added-off', choice: 'none' }
    await post(http, `${job}/readings`, ended).expect(303)
    const kills = 'The spark can kill'
    const way = `${job}/home?way=controls-home&line=99`
    expect(await wordsOn(http, way)).toContain(kills)
    const left = { version: 2, check: 'reseat-connectors', reason: 'Not safe there', begun: 'no' }
    await post(http, `${job}/skips`, left).expect(303)
    expect(await wordsOn(http, way)).toContain(kills)
  })
})
