import { resolve } from 'node:path'
import { SetupProblem } from './setup-problem.ts'
import { hostName } from './web/own-names.ts'

/** What can be set from outside, all by environment variables. */
export interface Settings {
  /** `COILHOUND_DATA`: the folder that jobs are kept in; made if it is not there. */
  readonly data: string
  /** `HOST`: the address to listen on. Only this machine, unless told otherwise. */
  readonly host: string
  /** `PORT`: 0 lets the system choose a free one. */
  readonly port: number
  /** The host, unless it is an IPv6 address, and `COILHOUND_NAMES`: what browsers may call this server. */
  readonly names: readonly string[]
  /** `COILHOUND_CURRENCY`: what a price is in that says nothing of it; may be empty. */
  readonly currency: string
}

export function settingsFrom(environment: NodeJS.ProcessEnv): Settings {
  const host = environment.HOST || '127.0.0.1'
  return {
    data: resolve(environment.COILHOUND_DATA || 'data'),
    host,
    port: portFrom(environment.PORT || '4180'),
    names: [hostName(host) ?? [], namesFrom(environment.COILHOUND_NAMES || '')].flat(),
    currency: currencyFrom(environment.COILHOUND_CURRENCY || ''),
  }
}

function portFrom(text: string): number {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN
  if (port <= 65535) return port
  throw new SetupProblem(`PORT must be a whole number from 0 to 65535, not "${text}".`)
}

function currencyFrom(text: string): string {
  const currency = text.trim()
  if (/^[\p{L}\p{Sc}]{0,8}$/u.test(currency)) return currency
  throw new SetupProblem(
    `COILHOUND_CURRENCY must be a sign or letters, eight at most, such as EUR, not "${text}".`,
  )
}

/** Names with commas between; one comma too many is no mistake. */
function namesFrom(text: string): string[] {
  const names = text.split(',').map((each) => each.trim())
  return names.filter((each) => each !== '').map(nameFrom)
}

function nameFrom(text: string): string {
  const name = hostName(text)
  if (name !== undefined) return name
  throw new SetupProblem(
    `COILHOUND_NAMES must be names of this computer with commas between, such as workshop.local, not "${text}".`,
  )
}
