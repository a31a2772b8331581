import { join } from 'node:path'
import type { FastifyInstance } from 'fastify'
import { buildApp } from './app.ts'
import { drawAhead } from './knowledge/instantiate/ahead.ts'
import { keptKnowledge } from './knowledge/kept/kept.ts'
import type { Knowledge } from './knowledge/knowledge.ts'
import { KnowledgeProblems } from './knowledge/problems.ts'
import { type Settings, settingsFrom } from './settings.ts'
import { listen, openData } from './setup.ts'
import { SetupProblem } from './setup-problem.ts'

const treesFolder = join(import.meta.dirname, '..', 'trees')
const keptFile = join(import.meta.dirname, 'knowledge.json')
/** Those who change it run it from source, those who use it from the build. */
const fromSource = import.meta.filename.endsWith('.ts')

try {
  await start(settingsFrom(process.env))
} catch (problem) {
  // Only what a person can mend is a sentence; a bug keeps its stack.
  if (!(problem instanceof SetupProblem || problem instanceof KnowledgeProblems)) throw problem
  console.error(problem.message)
  process.exitCode = 1
}

async function start(settings: Settings): Promise<void> {
  const knowledge = await knowledgeAtStart()
  const store = await openData(settings)
  const logger = { level: 'error', stream: process.stderr }
  const { names, currency } = settings
  const app = buildApp({ knowledge, store, names, currency, logger, freshViews: fromSource })
  // The store goes last: requests that are still being answered write to it.
  app.addHook('onClose', () => store.close())
  const address = await listen(app, settings)
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => end(app))
  console.log(`Coilhound is at ${address}`)
  drawAhead(knowledge, () => !app.server.listening)
  if (store.madeNew) console.log(`There were no jobs yet, so a new file was made: ${store.madeNew}`)
}

/** Beside the build it is kept for the next start; whoever works on it has it read anew each time. */
async function knowledgeAtStart(): Promise<Knowledge> {
  if (!fromSource) return keptKnowledge(treesFolder, keptFile)
  const { loadKnowledge } = await import('./knowledge/load.ts')
  return loadKnowledge(treesFolder)
}

/** What is being answered may finish; a browser that holds a line open without asking may not wait. */
function end(app: FastifyInstance): void {
  app.close()
  setTimeout(() => app.server.closeAllConnections(), 2000).unref()
}
