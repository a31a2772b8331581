import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import request from 'supertest'
import { buildApp } from '../../server/app.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { openStore } from '../../server/store/open.ts'
import { memory } from '../support/memory.ts'

export type Http = ReturnType<typeof request>

/** The real app on a database of its own, for whoever talks to it and closes it afterwards. */
export async function openApp(knowledge: Knowledge) {
  const folder = mkdtempSync(join(memory ?? tmpdir(), 'coilhound-'))
  const store = await openStore(folder)
  const app = buildApp({ knowledge, store })
  // A server that does not listen yet would be opened and closed for each request.
  await app.listen({ host: '127.0.0.1', port: 0 })
  const close = async () => {
    await app.close()
    await store.close()
    rmSync(folder, { recursive: true, force: true })
  }
  return { http: request.agent(app.server).set('Accept-Encoding', 'identity'), close }
}
