import type { FastifyInstance } from 'fastify'
import request from 'supertest'
import { beforeAll, onTestFinished } from 'vitest'
import { type AppParts, buildApp } from '../../server/app.ts'
import { openStore, type Store } from '../../server/store/open.ts'
import { emptyFolder, newFolder, removeFolder } from './folder.ts'
import { shippedKnowledge } from './knowledge.ts'
import { allRoomsCookie } from './rooms.ts'

export {
  anyCase,
  shippedCases as allCases,
  shippedKnowledge,
  shippedTrees as treesFolder,
  twin,
} from './knowledge.ts'

/** Sends requests without a port, one at a time or together. */
export type Http = ReturnType<typeof request>

/** A whole app on real trees and a real database, without a port. */
export interface ReadyApp {
  readonly app: FastifyInstance
  readonly store: Store
  readonly http: Http
}

/** Builds an app that answers, on a data folder of its own unless told otherwise; closed after the test. */
export async function readyApp(
  parts: Partial<AppParts> & { readonly data?: string } = {},
): Promise<ReadyApp> {
  const { data = emptyFolder(), ...others } = parts
  const { close, ...ready } = await startedApp(data, others)
  onTestFinished(close)
  return ready
}

/** One such app for all tests of a file, closed after the last; for tests that do not mind each other's jobs. */
export function appForAll(): { readonly http: () => Http; readonly app: () => FastifyInstance } {
  let ready: ReadyApp | undefined
  beforeAll(async () => {
    const data = newFolder()
    const { close, ...started } = await startedApp(data)
    ready = started
    return async () => {
      await close()
      removeFolder(data)
    }
  })
  return { http: () => ready!.http, app: () => ready!.app }
}

/** Requests of whoever has every room of a job open. */
const readingAll = (server: FastifyInstance['server']): Http =>
  request.agent(server).set('Cookie', `${allRoomsCookie.name}=${allRoomsCookie.value}`)

async function startedApp(data: string, parts: Partial<AppParts> = {}) {
  const store = await openStore(data)
  const app = buildApp({ knowledge: shippedKnowledge(), store, ...parts })
  await app.ready()
  const close = async () => {
    await app.close()
    await store.close()
  }
  return { app, store, http: readingAll(app.server), close }
}
