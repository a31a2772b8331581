import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'

const project = resolve(import.meta.dirname, '../..')

export interface BenchServer {
  readonly address: string
  /** From `npm start` to the printed address, in seconds; compiling included. */
  readonly startSeconds: number
  /** Resident memory of the server process, in MB, as the kernel counts it. */
  memory(): number
  stop(): void
}

/** `npm start` as a user would type it, on an empty data folder and a free port. */
export function startedServer(): Promise<BenchServer> {
  const began = performance.now()
  const child = spawn('npm', ['start'], {
    cwd: project,
    detached: true,
    env: {
      ...process.env,
      PORT: '0',
      COILHOUND_DATA: mkdtempSync(join(tmpdir(), 'bench-')),
    },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  return new Promise((started) => {
    child.stdout.on('data', (printed) => {
      const address = String(printed).match(/http:\S+/)?.[0]
      if (address === undefined) return
      started({
        address,
        startSeconds: (performance.now() - began) / 1000,
        memory: () => residentMegabytes(serverBelow(child.pid!)),
        stop: () => process.kill(-child.pid!, 'SIGTERM'),
      })
    })
  })
}

/** npm starts a shell that starts the server: the last process of the chain. */
function serverBelow(pid: number): number {
  const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim()
  const first = children.split(' ')[0]
  return first ? serverBelow(Number(first)) : pid
}

function residentMegabytes(pid: number): number {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8')
  return Number(/VmRSS:\s+(\d+) kB/.exec(status)![1]) / 1024
}
