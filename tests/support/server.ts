import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { resolve } from 'node:path'
import { text } from 'node:stream/consumers'
import { onTestFinished } from 'vitest'

const project = resolve(import.meta.dirname, '../..')

/** How to run the server: from source here, or what was built elsewhere. */
export interface Run {
  readonly environment: Readonly<Record<string, string>>
  readonly arguments?: readonly string[]
  readonly folder?: string
  /** No file may grow beyond that many kilobytes: as good as a full disk, and needs no disk. */
  readonly room?: number
}

export interface RunningServer {
  /** Without a slash at the end. */
  readonly address: string
  /** Sends the signal, and resolves to the exit code and what was printed. */
  stop(signal: NodeJS.Signals): Promise<Ended>
}

export interface Ended {
  readonly code: number | null
  readonly printed: string
  readonly complained: string
}

/** A server in a process of its own, on a free port, ended after the test at the latest. */
export async function runningServer(run: Run): Promise<RunningServer> {
  const { child, ended } = spawned({ ...run, environment: { PORT: '0', ...run.environment } })
  const address = await Promise.race([addressFrom(child), ended])
  if (typeof address !== 'string') throw new Error(`The server ended: ${address.complained}`)
  return {
    address,
    stop: (signal) => {
      child.kill(signal)
      return ended
    },
  }
}

/** Runs a server that is expected to end by itself. */
export function endedServer(run: Run): Promise<Ended> {
  return spawned(run).ended
}

function spawned({ environment, arguments: given = fromSource, folder = project, room }: Run) {
  const { NODE_ENV: _, VITEST: __, ...inherited } = process.env
  const command = [process.execPath, ...given]
  const limited = ['bash', '-c', `ulimit -f ${room} && exec "$@"`, 'bash', ...command]
  const [program, ...words] = room === undefined ? command : limited
  const child = spawn(program!, words, {
    cwd: folder,
    env: { ...inherited, ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  onTestFinished(() => void child.kill('SIGKILL'))
  const ended = Promise.all([text(child.stdout), text(child.stderr), once(child, 'close')]).then(
    ([printed, complained]): Ended => ({ code: child.exitCode, printed, complained }),
  )
  return { child, ended }
}

const fromSource = ['--import', 'tsx', 'server/main.ts']

function addressFrom({ stdout }: ChildProcess): Promise<string> {
  return new Promise((found) => {
    stdout?.on('data', (printed) => {
      const address = String(printed).match(/http:\S+/)?.[0]
      if (address !== undefined) found(address)
    })
  })
}
