import { cpSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { DatabaseSync } from '@photostructure/sqlite'
import { beforeEach, describe, expect, it, onTestFinished } from 'vitest'
import { openStore } from '../../server/store/open.ts'
import { builtCopy, ownPackages } from '../support/built.ts'
import { emptyFolder } from '../support/folder.ts'
import { oneSentence } from '../support/one-sentence.ts'
import { endedServer } from '../support/server.ts'
import { spoil } from '../support/spoil.ts'

const built = builtCopy()

/** How a server ends that is started on that folder. */
function endedOn(data: string, room?: number) {
  const environment = { COILHOUND_DATA: data, PORT: '0' }
  return endedServer({ ...built, environment, ...(room !== undefined && { room }) })
}

describe('a server that cannot open its jobs says why in one sentence, and ends with 1', () => {
  /** A folder with a closed file, and the file opened by another program. */
  async function usedFolder() {
    const data = emptyFolder()
    await (await openStore(data)).close()
    const path = join(data, 'coilhound.sqlite')
    const other = new DatabaseSync(path)
    onTestFinished(() => void (other.isOpen && other.close()))
    return { data, path, other, cannot: `The data folder ${data} cannot be used: ` }
  }

  it('where another program holds the file', async () => {
    const { data, other, cannot } = await usedFolder()
    other.exec('BEGIN EXCLUSIVE')
    expect(await endedOn(data)).toEqual(
      oneSentence(`${cannot}another program holds coilhound.sqlite`),
    )
  })

  it('where it was written by a later version', async () => {
    const { data, other, cannot } = await usedFolder()
    other.exec("INSERT INTO kysely_migration VALUES ('9999-later', '2031-05-07T14:00:00.000Z')")
    const sentence = `${cannot}coilhound.sqlite was written by a later version of Coilhound`
    expect(await endedOn(data)).toEqual(oneSentence(sentence))
  })

  it('where the middle of it is damaged', async () => {
    const { data, path, other, cannot } = await usedFolder()
    other.close()
    spoil(path)
    expect(await endedOn(data)).toEqual(oneSentence(`${cannot}coilhound.sqlite is damaged`))
  })

  it.each([
    ['not even make the file', 0],
    ['make the file, but not write beside it', 8],
  ])('where the disk is so full that it can %s', async (_, room) => {
    const data = emptyFolder()
    const sentence = `The data folder ${data} cannot be used: the disk is full; make room on it.`
    expect(await endedOn(data, room)).toEqual(oneSentence(sentence))
  })
})

describe('a server without its database driver says what to do in one sentence, and ends with 1', () => {
  const driver = join(built.folder, 'node_modules', '@photostructure', 'sqlite')
  const binaries = join(driver, 'prebuilds')

  beforeEach(() => {
    ownDriver(built.folder)
  })

  it.each([
    ['where it was not installed', () => rmSync(driver, { recursive: true })],
    ['where there is no binary for this machine', () => rmSync(binaries, { recursive: true })],
    ['where its binary is one for another machine', () => spoilBinaries(binaries)],
  ])('%s', async (_, prepare) => {
    prepare()
    const sentence = `The database driver cannot be loaded; run npm install again with this Node, ${process.version} (`
    expect(await endedOn(emptyFolder())).toEqual(oneSentence(sentence))
  })
})

/** Gives a built copy a driver of its own; everything else stays shared with the project. */
function ownDriver(folder: string): void {
  ownPackages(folder, '@photostructure')
  const shared = resolve(import.meta.dirname, '../../node_modules')
  const driver = ['@photostructure', 'sqlite']
  const filter = (source: string) => !source.endsWith(join('sqlite', 'src'))
  const own = join(folder, 'node_modules', ...driver)
  cpSync(join(shared, ...driver), own, { recursive: true, filter })
}

function spoilBinaries(folder: string): void {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  const binaries = files.filter((file) => file.endsWith('.node'))
  expect(binaries.length).toBeGreaterThan(0)
  for (const each of binaries) writeFileSync(join(folder, each), 'of another machine')
}
