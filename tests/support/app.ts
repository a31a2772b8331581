import { resolve } from 'node:path'
import type { FastifyInstance } from 'fastify'
import request from 'supertest'
import { onTestFinished } from 'vitest'
import { type AppParts, buildApp } from '../../server/app.ts'
import type { Case } from '../../server/knowledge/case.ts'
import { complaintsFor } from '../../server/knowledge/fits.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { loadKnowledge } from '../../server/knowledge/load.ts'
import { openStore, type Store } from '../../server/store/open.ts'
import { emptyFolder } from './folder.ts'

export const treesFolder = resolve(import.meta.dirname, '../../trees')

let shipped: Knowledge | undefined

/** The knowledge that is shipped, read once for all tests of a file. */
export function shippedKnowledge(): Knowledge {
  shipped ??= loadKnowledge(treesFolder)
  return shipped
}

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
  const store = await openStore(data)
  const app = buildApp({ knowledge: shippedKnowledge(), store, ...others })
  await app.ready()
  onTestFinished(async () => {
    await app.close()
    await store.close()
  })
  return { app, store, http: request(app.server) }
}

/** Every complaint on every machine that it fits. */
export function allCases(): Case[] {
  const knowledge = shippedKnowledge()
  return [...knowledge.machines.keys()].flatMap((machine) =>
    complaintsFor(knowledge, machine).map(({ id }) => caseFor(knowledge, machine, id)),
  )
}
