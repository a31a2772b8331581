import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { htmxFile, staticFolder } from './folders.ts'
import { stylesheet } from './stylesheet.ts'

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
export const stylePath = `${staticPrefix}coilhound.css`

/**
 * Content hashes by path. An address that carries its file's hash changes with the file, so whoever
 * asked for it may keep the answer for ever.
 */
export type Versions = ReadonlyMap<string, string>

export function versionsOfFiles(): Versions {
  const ours = readdirSync(staticFolder, { withFileTypes: true }).filter((entry) => entry.isFile())
  return new Map([
    ...ours.map(
      ({ name }) => [staticPrefix + name, hashOf(contentOf(staticFolder, name))] as const,
    ),
    [htmxPath, hashOf(contentOf(htmxFile))],
    [stylePath, hashOf(stylesheet())],
  ])
}

export function assetsAt(versions: Versions): Assets {
  const address = (path: string): string => `${path}?v=${versions.get(path)}`
  return {
    css: address(stylePath),
    script: address(`${staticPrefix}coilhound.js`),
    icon: address(`${staticPrefix}coilhound.svg`),
    htmx: address(htmxPath),
  }
}

const contentOf = (...path: readonly string[]): Buffer => readFileSync(join(...path))

function hashOf(content: string | Buffer): string {
  return createHash('sha256').update(content).digest('hex').slice(0, 12)
}
