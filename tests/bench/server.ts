import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { cpuSeconds, residentMegabytes } from './process-figures.ts'

const project = resolve(import.meta.dirname, '../..')

export interface BenchServer {
  readonly address: string
  /** From the command to the printed address, in seconds. */
  readonly startSeconds: number
  /** CPU of the server process until then, in seconds. */
  readonly startCpu: number
  /** CPU of the server process so far, in seconds. */
  cpu(): number
  /** Resident memory of the server process, in MB. */
  memory(): number
  stop(): void
}

/** `npm start` as a user would type it, compiling included, on an empty data folder and a free port. */
export function startedServer(): Promise<BenchServer> {
  return started('npm', ['start'])
}

/** A server that was built before, or another script that prints its address. */
export function startedScript(...script: readonly string[]): Promise<BenchServer> {
  return started(process.execPath, script)
}

function started(command: string, given: readonly string[]): Promise<BenchServer> {
  const began = performance.now()
  const child = spawn(command, given, {
    cwd: project,
    detached: true,
    env: {
      ...process.env,
      PORT: '0',
      COILHOUND_DATA: mkdtempSync(join(tmpdir(), 'bench-')),
    },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  return addressFrom(child).then((address) => {
    const pid = lastBelow(child.pid!)
    return {
      address,
      startSeconds: (performance.now() - began) / 1000,
      startCpu: cpuSeconds(pid),
      cpu: () => cpuSeconds(pid),
      memory: () => residentMegabytes(pid),
      stop: () => process.kill(-child.pid!, 'SIGTERM'),
    }
  })
}

function addressFrom({ stdout }: ChildProcess): Promise<string> {
  return new Promise((found) => {
    stdout?.on('data', (printed) => {
      const address = String(printed).match(/http:\S+/)?.[0]
      if (address !== undefined) found(address)
    })
  })
}

/** npm starts a shell that starts the server: the last process of the chain. */
function lastBelow(pid: number): number {
  const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim()
  const first = children.split(' ')[0]
  return first ? lastBelow(Number(first)) : pid
}
