import { describe, expect, it } from 'vitest'
import { prospects } from '../../server/diagnosis/verdict/explain.ts'
import { presentTreeDrawing } from '../../server/jobs/beside/tree-drawing.ts'
import { smallJob } from '../support/small-job.ts'

describe('the drawing of a job’s fault tree', () => {
  it('cuts through what a reading cleared, and notes the reading', () => {
    const readings = { 'exciter.resistance': 365, 'igniter.swap': 'as-before' }
    const drawing = presentTreeDrawing(smallJob(readings), [])
    expect(drawing).toContain('class="cut"')
    expect(drawing.replaceAll(/<[^>]+>/g, ' ')).toContain('as before')
    expect(presentTreeDrawing(smallJob(), [])).not.toContain('class="cut"')
  })

  it('marks what the check on the page decides, and nothing where there is none', () => {
    const input = smallJob()
    const foreseen = prospects(input.kase.model, input.evidence, 'igniter.swap')
    expect(presentTreeDrawing(input, foreseen)).toContain('class="asked"')
    expect(presentTreeDrawing(smallJob(), [])).not.toContain('class="asked"')
  })
})
