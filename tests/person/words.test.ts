import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { shippedCases, shippedTrees } from '../support/knowledge.ts'
import { observations } from './observations/index.ts'
import { isKnown, sentencesOf } from './words/steps.ts'

const cases = shippedCases()

/** Words that take something apart or put it back, as far as one can tell by the verb. */
const handiwork =
  /\b(unplug|unscrew (the|every|both)|take (out|off)|pull (it|its|the .*) (off|apart|out)|(put|push|screw|join) .*\b(back|again)\b|^plug .* in\b|change .* over|exchange)/i

/** Sentences with such a verb that leave the machine as it is: probes, clips, tools, and what others say. */
const leavesItAsItIs = [
  /exchange the (probes|two clips)|back-probe (pins? )?(out|off)|probes out again|gauge out again/i,
  /thermometer off|take the gun away|take both hands|hands? away|with the maker's/i,
  /put it back with both tapers|flywheel|^dry a wet plug|as you set it|known good|old hand|or take it off/i,
  /take the clips and the back-probe pin off|lay .* side by side/i,
  /^undo the screw half a turn|turn the screw back to where it stood|^(then )?pull the rope/i,
  /^take off what lies over|^screw the module down again|main jet|jets back in|^put (the bowl back|a jar below)/i,
  /^before anything else at the next start|^if it does not, |^put the filter back|unplug each of them at its own plug/i,
]

describe('the words of the pages', () => {
  it('name only checks that the literal person knows how to make', () => {
    const kinds = readdirSync(`${shippedTrees}/checks`).map((file) => file.replace('.yaml', ''))
    expect(kinds.length).toBeGreaterThan(100)
    // A kind that is missing gets a function in the file of its subject in tests/person/observations/.
    expect(kinds.filter((kind) => observations[kind] === undefined)).toEqual([])
    expect(Object.keys(observations).filter((kind) => !kinds.includes(kind))).toEqual([])
  })

  it('take apart and put back in words that the literal person has heard', () => {
    const steps = cases.flatMap(({ checks }) =>
      [...checks.values()].flatMap((card) => {
        // The last steps may be the words of a set-up: those are known by the set-up.
        const ofSetups = new Set(card.setups.flatMap(({ undo }) => (undo ? [undo.do] : [])))
        return card.do.filter((step) => !ofSetups.has(step)).flatMap(sentencesOf)
      }),
    )
    const handy = [...new Set(steps)].filter((sentence) => handiwork.test(sentence))
    expect(handy.length).toBeGreaterThan(50)
    // What is unheard of is added to tests/person/words/, or above where it leaves the machine as it is.
    const unheard = handy.filter(
      (sentence) => !isKnown(sentence) && !leavesItAsItIs.some((words) => words.test(sentence)),
    )
    expect(unheard).toEqual([])
  })
})
