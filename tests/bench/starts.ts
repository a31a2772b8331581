import { rmSync } from 'node:fs'
import { resolve } from 'node:path'
import { print } from './budgets.ts'
import { type BenchServer, startedScript, startedServer } from './server.ts'

const kept = resolve(import.meta.dirname, '../../.build/knowledge.json')

/** Prints what a first start takes and what a second one does, and leaves a server of a second one. */
export async function printStarts(): Promise<BenchServer> {
  rmSync(kept, { force: true })
  const first = await startedServer()
  first.stop()
  print('from npm start to listening, compiling, the first time', first.startSeconds, 's')
  print('CPU of the server until then', first.startCpu, 's')
  const again = [await cpuOfStart(), await cpuOfStart(), await cpuOfStart()]
  const second = Math.min(...again)
  print('the same with knowledge kept, the best of three', second, 's')
  print('a start with knowledge kept over the first', second / first.startCpu, '', { atMost: 0.5 })
  return startedScript('.build/main.js')
}

async function cpuOfStart(): Promise<number> {
  const server = await startedScript('.build/main.js')
  server.stop()
  return server.startCpu
}
