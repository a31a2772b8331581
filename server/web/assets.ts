import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { htmxFile, staticFolder } from './folders.ts'

/** Addresses of what every page loads, for the layout. */
export interface Assets {
  readonly css: string
  readonly script: string
  readonly icon: string
  readonly htmx: string
}

/** Where each file is served, without its version. */
export const staticPrefix = '/static/'
export const htmxPath = `${staticPrefix}htmx.min.js`

/**
 * Content hashes by path. An address that carries its file's hash changes with the file, so whoever
 * asked for it may keep the answer for ever.
 */
export type Versions = ReadonlyMap<string, string>

export function versionsOfFiles(): Versions {
  const ours = readdirSync(staticFolder, { withFileTypes: true }).filter((entry) => entry.isFile())
  return new Map([
    ...ours.map(({ name }) => [staticPrefix + name, hashOf(join(staticFolder, name))] as const),
    [htmxPath, hashOf(htmxFile)],
  ])
}

export function assetsAt(versions: Versions): Assets {
  const address = (path: string): string => `${path}?v=${versions.get(path)}`
  return {
    css: address(`${staticPrefix}coilhound.css`),
    script: address(`${staticPrefix}coilhound.js`),
    icon: address(`${staticPrefix}coilhound.svg`),
    htmx: address(htmxPath),
  }
}

function hashOf(path: string): string {
  return createHash('sha256').update(readFileSync(path)).digest('hex').slice(0, 12)
}
