import { cpSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { loadKnowledge } from '../../server/knowledge/load.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import type { Quantity } from '../../server/measure/reading/quantity.ts'
import { contactAdds } from '../../server/measure/reading/touching.ts'
import { readyApp, treesFolder } from '../support/app.ts'
import { emptyFolder } from '../support/folder.ts'
import { openJob, post } from '../support/job.ts'
import { textIn, valueIn } from '../support/page.ts'

/** A kind of reading that nothing in the house has heard of. */
const forwardVoltage: Quantity = {
  id: 'forward-voltage',
  name: 'forward voltage',
  unit: 'V',
  setting: 'dc-voltage',
  kinds: [],
  most: 4,
  negative: 'A diode passes one way only: exchange the probes and read again.',
  bands: ['short', 'low', 'in range', 'high', 'open'],
  bandNames: { short: 'passes both ways', open: 'passes no way' },
  overRange: 'open',
  whenOver: 'OL means that it passes no way: send it as OL.',
  touches: {
    ...contactAdds,
    one: 'try',
    many: 'tries',
    another: 'Try again',
    contact: null,
    leads: false,
  },
  corrections: [],
  mistakes: ['thousand off'],
  said: (reading) => `let ${reading} stand across it`,
  goodOne: 'lets stand',
  examples: { few: '0.52 or OL', all: '0.52, 520m or OL', several: '0.52 0.53 0.52' },
}

const rows = { ...quantities, [forwardVoltage.id]: forwardVoltage }

/** The shipped trees with a property of that kind, limits for it, and a check that reads it. */
function treesWithIt(): string {
  const folder = emptyFolder()
  cpSync(treesFolder, folder, { recursive: true })
  const change = (file: string, from: string, to: string) => {
    const text = readFileSync(join(folder, file), 'utf8')
    expect(text.split(from), `“${from}” once in ${file}`).toHaveLength(2)
    writeFileSync(join(folder, file), text.replace(from, to))
  }
  const kind = 'parts/rectifier-regulator.yaml'
  const property = '{ quantity: forward-voltage, says: forward voltage of its diodes }'
  change(kind, 'properties:\n', `properties:\n  forward: ${property}\n`)
  change(
    kind,
    '      diodes: { one-open',
    '      forward: { open: 0.7, in range: 0.3 }\n      diodes: { one-open',
  )
  change(
    kind,
    '      diodes: { one-shorted: 0.92',
    '      forward: { short: 0.9, in range: 0.1 }\n      diodes: { one-shorted: 0.92',
  )
  const sheet = 'machines/haulmoor-1e.yaml'
  const limits = 'forward: { low: 0.4 V, high: 0.7 V, source: invented for the test }'
  change(sheet, '      output-volts:', `      ${limits}\n      output-volts:`)
  change(sheet, 'for: [output-volts]', 'for: [output-volts, forward]')
  writeFileSync(join(folder, 'checks/forward.yaml'), forwardCheck)
  return folder
}

const forwardCheck = `id: forward
title: 'Forward voltage of the {part}'
about:
  kind: property
  property: forward
  healthy: { in range: 0.95, open: 0.04, short: 0.01 }
engine: stopped
where: [bench, trailside]
tools: [multimeter]
meter: Diode range.
minutes: 2
do: ['Touch {place}. Limits: {limits}.']
phone: Touch the two pins and read me the number.
why: What passes both ways drains the battery.
cautions: [battery]
owner: yes
source: invented for the test
`

const check = 'forward.rectifier.output-plug'

let loaded: Knowledge | undefined

async function jobWithIt() {
  loaded ??= loadKnowledge(treesWithIt(), rows)
  const kase = caseFor(loaded, 'haulmoor-1e', 'not-charging')
  const ready = await readyApp({ knowledge: loaded })
  return { ...ready, kase, job: await openJob(ready.http, kase) }
}

describe('a kind of reading that is one row more', () => {
  it('is refused in the trees where nobody wrote the row', () => {
    expect(() => loadKnowledge(treesWithIt())).toThrow(
      /parts\/rectifier-regulator\.yaml:\d+: .*quantity: write one of resistance, /,
    )
  })

  it('is drawn out with its bands and limits', async () => {
    const { kase } = await jobWithIt()
    expect(kase.checks.get(check)).toMatchObject({
      measurand: { quantity: { id: 'forward-voltage' }, limits: { low: 0.4, high: 0.7 } },
      outcomes: ['short', 'low', 'in range', 'high', 'open'],
    })
  })

  it('is asked for in its own words', async () => {
    const { http, job } = await jobWithIt()
    const { text } = await http.get(`${job}?check=${check}`).expect(200)
    expect(valueIn(text, 'check')).toBe(check)
    expect(textIn(text)).toContain(
      'Type what the meter shows: 0.52, 520m or OL. Several tries in a row are welcome: 0.52 0.53 0.52.',
    )
    expect(textIn(text)).toContain('Limits: 0.4 V to 0.7 V.')
    expect(text).toContain('value="over"')
    expect(text).not.toContain('name="celsius"')
  })

  it.each([
    ['', 'Write what the meter shows, such as 0.52 or OL.'],
    ['NaN', 'There is no number in it: write one, such as 0.52 or OL.'],
    ['-0.5', 'A diode passes one way only: exchange the probes and read again.'],
    ['4.01', 'More than 4 V cannot be'],
    ['0.5 VDC', 'does not fit forward voltage'],
    ['520', 'More than 4 V cannot be'],
    ['0.00052', '0.00052 V is a thousand times off, and 0.52 V would fit'],
  ])('is asked for again where “%s” was typed', async (typed, sentence) => {
    const { http, job } = await jobWithIt()
    const answer = await post(http, `${job}/readings`, { version: 1, check, typed })
    expect(answer.status).toBe(422)
    expect(textIn(answer.text)).toContain(sentence)
  })

  it.each([
    ['0.52 0.53', 'in range', 'Good', 'let 0.52 V stand across it'],
    ['0.01 0.01', 'passes both ways', 'Bad: passes both ways', 'let 0.01 V stand across it'],
    ['OL OL OL', 'passes no way', 'Bad: passes no way', 'let OL stand across it'],
  ])('is taken, judged and weighed: %s is %s', async (typed, band, decision, said) => {
    const { http, job } = await jobWithIt()
    await post(http, `${job}/readings`, { version: 1, check, typed }).expect(303)
    const { text } = await http.get(job).expect(200)
    const page = textIn(text)
    expect(page).toContain(`tries${typed.startsWith('OL') ? '' : ': '}`)
    expect(page).toContain(` ${decision} Correct : `)
    expect(page).toContain(`cleared: rectifier-regulator ${said}, ${band}, >99 %`)
    const [, likeliest] = /At the start Now (\S+) \d+ % \d+ %/.exec(page)!
    expect(likeliest).toBe(decision === 'Good' ? 'Battery' : 'Rectifier-regulator')
  })
})
