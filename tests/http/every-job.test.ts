import { describe, expect, it } from 'vitest'
import { answerOn } from '../support/answer-on.ts'
import { allCases, appForAll } from '../support/app.ts'
import { namedFault } from '../support/hidden-fault.ts'
import { openForm, usualAtTheBench } from '../support/job.ts'
import { textIn } from '../support/page.ts'

/** A tree of one fault leaves nothing to be mistaken about. */
const cases = allCases()
  .filter(({ model }) => model.cutSets.length > 2)
  .map((kase) => [`${kase.complaint.id} on ${kase.machine.id}`, kase] as const)

describe('a job', () => {
  const { http } = appForAll()

  it.each(cases)('is walked to the part that failed: %s', async (_, kase) => {
    const fault = namedFault(kase)
    const form = openForm(kase, usualAtTheBench())
    const opened = await http().post('/jobs').type('form').send(form).expect(303)
    const job = opened.headers.location!

    // The first reading goes wrong, is noticed one check later, and is put right.
    const first = await answerOn(http(), job, fault.mistaken)
    await answerOn(http(), job, fault.typical)
    expect(await answerOn(http(), `${job}?correct=${first}`, fault.typical)).toBe(first)

    while ((await answerOn(http(), job, fault.typical)) !== null);
    const { text } = await http().get(job).expect(200)
    expect(textIn(text)).toContain(`The fault is in the ${fault.part}`)
  })
})
