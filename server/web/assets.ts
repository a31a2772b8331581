import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { extname, join } from 'node:path'
import { htmxFile, staticFolder } from './folders.ts'
import { stylesheet } from './stylesheet.ts'

/** A file that pages load, as it was when the server started. */
export interface Asset {
  readonly content: string
  readonly type: string
  /**
   * A hash of the content. An address that carries it changes with the file, so whoever asked for it
   * may keep the answer for ever.
   */
  readonly version: string
}

/** By the path it is served at, without its version. */
export type Assets = ReadonlyMap<string, Asset>

/** Addresses of what every page loads, for the layout. */
export interface AssetAddresses {
  readonly css: string
  readonly script: string
  readonly readAloud: string
  readonly icon: string
  readonly htmx: string
}

/** The files of `static/`, the stylesheet joined from its rooms, and htmx. */
export function loadAssets(): Assets {
  const ours = readdirSync(staticFolder, { withFileTypes: true }).filter((entry) => entry.isFile())
  return new Map([
    ...ours.map(({ name }) => asset(name, textOf(join(staticFolder, name)))),
    asset('htmx.min.js', textOf(htmxFile)),
    asset('coilhound.css', stylesheet()),
  ])
}

export function addressesOf(assets: Assets): AssetAddresses {
  const address = (name: string): string => `${pathOf(name)}?v=${assets.get(pathOf(name))?.version}`
  return {
    css: address('coilhound.css'),
    script: address('coilhound.js'),
    readAloud: address('read-aloud.js'),
    icon: address('coilhound.svg'),
    htmx: address('htmx.min.js'),
  }
}

const pathOf = (name: string) => `/static/${name}`
const textOf = (file: string) => readFileSync(file, 'utf8')

function asset(name: string, content: string): readonly [string, Asset] {
  const version = createHash('sha256').update(content).digest('hex').slice(0, 12)
  return [pathOf(name), { content, type: typeOf(name), version }]
}

const types: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.svg': 'image/svg+xml',
}

function typeOf(name: string): string {
  const type = types[extname(name)]
  if (type === undefined) throw new Error(`Nobody has said yet how to serve ${name}.`)
  return type
}
