import { describe, expect, it } from 'vitest'
import { readyApp, shippedKnowledge } from '../support/app.ts'
import { textIn } from '../support/page.ts'

const shipped = shippedKnowledge()

const without = (machines: typeof shipped.machines) =>
  readyApp({ knowledge: { ...shipped, machines } })

describe('the front page of a shop', () => {
  it('that has no sheet yet says where to write one, and so does its health page', async () => {
    const { http } = await without(new Map())
    const front = await http.get('/').expect(200)
    expect(textIn(front.text)).toContain('write its sheet in trees/machines')
    await http.get('/health').expect(200)
  })

  it('says of a machine that no complaint fits that its limits are at hand', async () => {
    const [id, machine] = [...shipped.machines][0]!
    const parts = machine.parts.filter(({ kind }) => kind === 'wiring').slice(0, 1)
    const { http } = await without(new Map([[id, { ...machine, parts }]]))
    const front = await http.get('/').expect(200)
    expect(textIn(front.text)).toContain('No complaint fits this machine yet')
    const limits = front.text.match(/href="(\/machines\/[^"/]+)"/)![1]!
    await http.get(limits).expect(200)
  })
})
