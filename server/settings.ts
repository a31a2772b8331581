import { resolve } from 'node:path'
import { SetupProblem } from './setup-problem.ts'

/** What can be set from outside, all by environment variables. */
export interface Settings {
  /** `COILHOUND_DATA`: the folder that jobs are kept in; made if it is not there. */
  readonly data: string
  /** `HOST`: the address to listen on. Only this machine, unless told otherwise. */
  readonly host: string
  /** `PORT`: 0 lets the system choose a free one. */
  readonly port: number
}

export function settingsFrom(environment: NodeJS.ProcessEnv): Settings {
  return {
    data: resolve(environment.COILHOUND_DATA || 'data'),
    host: environment.HOST || '127.0.0.1',
    port: portFrom(environment.PORT || '4180'),
  }
}

function portFrom(text: string): number {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN
  if (port <= 65535) return port
  throw new SetupProblem(`PORT must be a whole number from 0 to 65535, not "${text}".`)
}
