import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
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

/** Sends requests, one at a time or together. */
export type Http = ReturnType<typeof request>

/** A whole app on real trees and a real database. */
export interface ReadyApp {
  readonly app: FastifyInstance
  /** Where it listens, without a slash at the end. */
  readonly address: string
  readonly store: Store
  readonly http: Http
}

/** Builds an app that answers, on a data folder of its own unless told otherwise; closed after the test. */
export async function readyApp(
  parts: Partial<AppParts> & { readonly data?: string } = {},
): Promise<ReadyApp> {
  const { data = await withNewFile(), ...others } = parts
  const { close, ...ready } = await startedApp(data, others)
  onTestFinished(close)
  return ready
}

/** One such app for all tests of a file, closed after the last; for tests that do not mind each other's jobs. */
export function appForAll(): { readonly http: () => Http; readonly app: () => FastifyInstance } {
  let ready: ReadyApp | undefined
  beforeAll(async () => {
    const data = await withNewFile(newFolder())
    const { close, ...started } = await startedApp(data)
    ready = started
    return async () => {
      await close()
      removeFolder(data)
    }
  })
  return { http: () => ready!.http, app: () => ready!.app }
}

/**
 * A folder with a file in which there is no job yet, as a first start leaves it. Its tables are made once: over some
 * hundreds of apps that took longer than most tests.
 */
async function withNewFile(folder = emptyFolder()): Promise<string> {
  newFile ??= await madeNew()
  writeFileSync(join(folder, 'coilhound.sqlite'), newFile)
  return folder
}

let newFile: Buffer | undefined

async function madeNew(): Promise<Buffer> {
  const folder = newFolder()
  await (await openStore(folder)).close()
  const file = readFileSync(join(folder, 'coilhound.sqlite'))
  removeFolder(folder)
  return file
}

/** Requests of whoever has every room of a job open. What nobody packs, nobody has to unpack. */
const readingAll = (server: FastifyInstance['server']): Http =>
  request.agent(server).set({
    Cookie: `${allRoomsCookie.name}=${allRoomsCookie.value}`,
    'Accept-Encoding': 'identity',
  })

async function startedApp(data: string, parts: Partial<AppParts> = {}) {
  const store = await openStore(data)
  const app = buildApp({ knowledge: shippedKnowledge(), store, ...parts })
  // A server that does not listen yet would be opened and closed for each request.
  const address = await app.listen({ host: '127.0.0.1', port: 0 })
  const close = async () => {
    await app.close()
    await store.close()
  }
  return { app, address, store, http: readingAll(app.server), close }
}
