import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fastify from 'fastify'
import { minVersion, satisfies } from 'semver'
import { expect, it } from 'vitest'

interface Installed {
  readonly dev?: boolean
  readonly engines?: { readonly node?: string }
  readonly hasInstallScript?: boolean
}

const project = resolve(import.meta.dirname, '..')
const read = (file: string) => JSON.parse(readFileSync(resolve(project, file), 'utf8'))

const { '': own, ...lock } = read('package-lock.json').packages
const packages = Object.entries<Installed>(lock)
const oldest = minVersion(own.engines.node)!.version

it('every package that is needed to run it admits the oldest Node that it says it runs on', () => {
  const needed = packages.filter(([, { dev }]) => !dev)
  expect(needed.length).toBeGreaterThan(50)
  expect(needed.filter(([, { engines }]) => !admits(engines?.node, oldest))).toEqual([])
})

it('every package that is needed to work on it admits the last of those Nodes', () => {
  const last = '20.20.0'
  expect(satisfies(last, `~${oldest.split('.')[0]}`)).toBe(true)
  expect(packages.filter(([, { engines }]) => !admits(engines?.node, last))).toEqual([])
})

const admits = (range = '*', node: string) => satisfies(node, range)

it('says of every install script whether it may run', () => {
  const scripted = packages.filter(([, { hasInstallScript }]) => hasInstallScript)
  const names = scripted.map(([path]) => path.split('node_modules/').at(-1))
  expect(names).toContain('@photostructure/sqlite')
  expect(Object.keys(read('package.json').allowScripts).sort()).toEqual(names.sort())
})

it('gives a package that wants a newer Node an older one that serves it as well', async () => {
  const app = fastify()
  app.get('/', async ({ headers }) => headers.cookie)
  const { body } = await app.inject({ url: '/', cookies: { which: 'this one' } })
  expect(body).toBe('which=this%20one')
})
