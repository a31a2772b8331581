import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import request from 'supertest'
import { buildApp } from '../../server/app.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { openStore } from '../../server/store/open.ts'

export type Http = ReturnType<typeof request>

/** The real app on a database of its own, for whoever talks to it and closes it afterwards. */
export async function openApp(knowledge: Knowledge) {
  const folder = mkdtempSync(join(tmpdir(), 'coilhound-'))
  const store = await openStore(folder)
  const app = buildApp({ knowledge, store })
  await app.ready()
  const close = async () => {
    await app.close()
    await store.close()
    rmSync(folder, { recursive: true, force: true })
  }
  return { http: request(app.server), close }
}
