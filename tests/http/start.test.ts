import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { join } from 'node:path'
import request from 'supertest'
import { describe, expect, it, onTestFinished } from 'vitest'
import { openStore } from '../../server/store/open.ts'
import { builtCopy } from '../support/built.ts'
import { emptyFolder } from '../support/folder.ts'
import { oneSentence } from '../support/one-sentence.ts'
import { endedServer, runningServer } from '../support/server.ts'

const built = builtCopy()
const { folder: copy } = built

describe('the server', () => {
  it('prints one address, answers there, and ends when it is told to', async () => {
    const data = emptyFolder()
    await (await openStore(data)).close()
    const server = await runningServer({ ...built, environment: { COILHOUND_DATA: data } })
    const front = await fetch(server.address)
    expect(front.status).toBe(200)
    expect(await front.text()).toContain('Coilhound')
    const ended = await server.stop('SIGTERM')
    expect(ended).toEqual({
      code: 0,
      printed: `Coilhound is at ${server.address}\n`,
      complained: '',
    })
  })

  it.each([
    ['an empty folder', () => {}],
    ['an empty file', (file: string) => writeFileSync(file, '')],
  ])('says that it made a new file for the jobs where it finds %s', async (_, prepare) => {
    const data = emptyFolder()
    const file = join(data, 'coilhound.sqlite')
    prepare(file)
    const server = await runningServer({ ...built, environment: { COILHOUND_DATA: data } })
    const { printed } = await server.stop('SIGTERM')
    const made = `There were no jobs yet, so a new file was made: ${file}`
    expect(printed).toBe(`Coilhound is at ${server.address}\n${made}\n`)
  })

  it('answers to the names that it is given, and to no other', async () => {
    const environment = { COILHOUND_DATA: emptyFolder(), COILHOUND_NAMES: 'Workshop.lan' }
    const http = request((await runningServer({ ...built, environment })).address)
    await http.get('/').set({ host: 'workshop.lan' }).expect(200)
    await http.get('/').set({ host: 'foreign.lan' }).expect(421)
  })

  it('keeps its jobs in ./data unless told otherwise', async () => {
    const server = await runningServer({ ...built, environment: {} })
    await server.stop('SIGINT')
    expect(() => rmSync(join(copy, 'data', 'coilhound.sqlite'))).not.toThrow()
  })
})

describe('a server that cannot start says why in one sentence, and ends with 1', () => {
  it('where the port is taken', async () => {
    const other = createServer().listen(0, '127.0.0.1')
    onTestFinished(() => void other.close())
    await new Promise((listening) => other.once('listening', listening))
    const { port } = other.address() as { port: number }
    const environment = { COILHOUND_DATA: emptyFolder(), PORT: String(port) }
    const sentence = `Cannot listen on 127.0.0.1, port ${port}: the port is taken by another program`
    expect(await endedServer({ ...built, environment })).toEqual(oneSentence(sentence))
  })

  it.each(['host.invalid', '192.0.2.1'])('where the host is not here: %s', async (host) => {
    const environment = { COILHOUND_DATA: emptyFolder(), PORT: '0', HOST: host }
    const sentence = `Cannot listen on ${host}, port 0:`
    expect(await endedServer({ ...built, environment })).toEqual(oneSentence(sentence))
  })

  it('where the port is no port', async () => {
    const environment = { COILHOUND_DATA: emptyFolder(), PORT: 'eighty' }
    expect(await endedServer({ ...built, environment })).toEqual(oneSentence('PORT must be'))
  })

  it('where a name is none', async () => {
    const environment = { COILHOUND_DATA: emptyFolder(), PORT: '0', COILHOUND_NAMES: '*' }
    expect(await endedServer({ ...built, environment })).toEqual(
      oneSentence('COILHOUND_NAMES must'),
    )
  })

  it('where the data folder is a file', async () => {
    const file = join(emptyFolder(), 'data')
    writeFileSync(file, '')
    const environment = { COILHOUND_DATA: file, PORT: '0' }
    const sentence = `The data folder ${file} cannot be used: there is a file where a folder should be`
    expect(await endedServer({ ...built, environment })).toEqual(oneSentence(sentence))
  })

  it('where the data folder cannot be made', async () => {
    const environment = { COILHOUND_DATA: '/dev/null/data', PORT: '0' }
    const sentence = 'The data folder /dev/null/data cannot be used:'
    expect(await endedServer({ ...built, environment })).toEqual(oneSentence(sentence))
  })

  it('where the data folder holds something else under that name', async () => {
    const data = emptyFolder()
    writeFileSync(join(data, 'coilhound.sqlite'), 'these are the notes of last week\n'.repeat(99))
    const environment = { COILHOUND_DATA: data, PORT: '0' }
    const sentence = `The data folder ${data} cannot be used: coilhound.sqlite is damaged`
    expect(await endedServer({ ...built, environment })).toEqual(oneSentence(sentence))
  })

  it('where what stands there is a folder', async () => {
    const data = emptyFolder()
    mkdirSync(join(data, 'coilhound.sqlite'))
    const environment = { COILHOUND_DATA: data, PORT: '0' }
    const sentence = `The data folder ${data} cannot be used:`
    expect(await endedServer({ ...built, environment })).toEqual(oneSentence(sentence))
  })

  it('where a tree file has a mistake: with file, line and sentence', async () => {
    const file = join(copy, 'trees', 'meters', 'broken.yaml')
    onTestFinished(() => rmSync(file))
    writeFileSync(
      file,
      'id: broken\nname: Meter\nabout: It measures.\nranges: none\nsource: none\n',
    )
    const data = emptyFolder()
    const ended = await endedServer({ ...built, environment: { COILHOUND_DATA: data, PORT: '0' } })
    expect(ended).toEqual(oneSentence('meters/broken.yaml:4: '))
  })
})
