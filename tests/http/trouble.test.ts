import { renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { DatabaseSync } from '@photostructure/sqlite'
import { describe, expect, it, onTestFinished } from 'vitest'
import { openStore } from '../../server/store/open.ts'
import { anyCase } from '../support/app.ts'
import { builtCopy } from '../support/built.ts'
import { emptyFolder } from '../support/folder.ts'
import { openForm, steadyCheck } from '../support/job.ts'
import { formIn, textIn } from '../support/page.ts'
import { type RunningServer, runningServer } from '../support/server.ts'
import { spoil } from '../support/spoil.ts'

const kase = anyCase()
const reading = { version: '1', check: steadyCheck(kase).id, typed: '4k7 4k8' }
const built = builtCopy()

/** A running server with one job, and the file that it keeps it in. */
async function serverWithJob(room?: number) {
  const data = emptyFolder()
  const environment = { COILHOUND_DATA: data }
  const server = await runningServer({ ...built, environment, ...(room !== undefined && { room }) })
  const opened = await send(server, '/jobs', openForm(kase))
  expect(opened.status).toBe(303)
  return {
    server,
    data,
    file: join(data, 'coilhound.sqlite'),
    job: opened.headers.get('location')!,
  }
}

function send({ address }: RunningServer, path: string, fields: Record<string, string | string[]>) {
  const body = new URLSearchParams()
  for (const [name, value] of Object.entries(fields)) {
    for (const each of [value].flat()) body.append(name, each)
  }
  return fetch(address + path, { method: 'POST', body, redirect: 'manual' })
}

/** Sends the form again that an answer offers. */
async function sendAgain({ address }: RunningServer, answer: Response): Promise<Response> {
  const { action, fields } = formIn(await answer.text())
  const body = new URLSearchParams(fields)
  return fetch(address + action, { method: 'POST', body, redirect: 'manual' })
}

describe('a server whose file another program holds', () => {
  async function heldFile() {
    const { server, file, job } = await serverWithJob()
    const other = new DatabaseSync(file)
    onTestFinished(() => other.close())
    other.exec('BEGIN IMMEDIATE')
    return { server, job, release: () => other.exec('ROLLBACK') }
  }

  it('answers everybody else meanwhile, says so at last, and takes it when it is sent again', async () => {
    const { server, job, release } = await heldFile()
    const answered: string[] = []
    const posted = send(server, `${job}/readings`, reading)
    void posted.then(() => answered.push('the post'))
    await pause(200)
    expect((await fetch(`${server.address}/jobs`)).status).toBe(200)
    answered.push('the list')
    const answer = await posted
    expect(answered).toEqual(['the list', 'the post'])
    expect(answer.status).toBe(503)
    expect(textIn(await answer.clone().text())).toContain('Another program holds coilhound.sqlite')

    release()
    expect((await sendAgain(server, answer)).status).toBe(303)
    const { complained } = await server.stop('SIGTERM')
    expect(complained).toContain('database is locked')
  })

  it('waits a moment, and takes it as soon as the file is free', async () => {
    const { server, job, release } = await heldFile()
    const posted = send(server, `${job}/readings`, reading)
    await pause(300)
    release()
    expect((await posted).status).toBe(303)
  })
})

describe('a server whose file was taken away', () => {
  it.each([
    ['deleted', (file: string) => rmSync(file)],
    ['replaced', (file: string) => new DatabaseSync(moved(file)).exec('CREATE TABLE t (a)')],
    ['deleted with its folder', (file: string) => rmSync(join(file, '..'), { recursive: true })],
  ])('takes nothing more, keeps what was typed, and says so in the log: %s', async (_, take) => {
    const { server, file, job } = await serverWithJob()
    take(file)
    const answer = await send(server, `${job}/readings`, reading)
    expect(answer.status).toBe(503)
    const page = textIn(await answer.text())
    expect(page).toContain('coilhound.sqlite was deleted, moved or replaced')
    expect(page).toContain('4k7 4k8')
    expect((await send(server, '/jobs', openForm(kase))).status).toBe(503)
    expect((await fetch(server.address + job)).status).toBe(200)
    const { code, complained } = await server.stop('SIGTERM')
    expect(code).toBe(0)
    expect(complained).toContain(`POST ${job}/readings failed`)
    expect(complained).toMatch(/coilhound\.sqlite is (gone|another file than was opened)/)
  })

  it('takes what is sent again once it is put back', async () => {
    const { server, file, job } = await serverWithJob()
    const elsewhere = join(emptyFolder(), 'coilhound.sqlite')
    renameSync(file, elsewhere)
    const answer = await send(server, `${job}/readings`, reading)
    expect(answer.status).toBe(503)
    renameSync(elsewhere, file)
    expect((await sendAgain(server, answer)).status).toBe(303)
    expect(textIn(await (await fetch(server.address + job)).text())).toContain('4.7 kΩ')
  })
})

function moved(file: string): string {
  renameSync(file, `${file}.old`)
  return file
}

it('a server whose disk is full takes nothing more, and shows what there is', async () => {
  const { server, job } = await serverWithJob(300)
  const form = openForm(kase, { note: 'x'.repeat(500) })
  let answer = await send(server, '/jobs', form)
  for (let jobs = 1; answer.status === 303 && jobs < 99; jobs++) {
    answer = await send(server, '/jobs', form)
  }
  expect(answer.status).toBe(503)
  expect(textIn(await answer.text())).toContain('The disk is full; make room on it.')
  expect((await fetch(server.address + job)).status).toBe(200)
  const { complained } = await server.stop('SIGTERM')
  expect(complained).toContain('disk I/O error')
  expect(complained).not.toContain('rollback')
})

it('a server whose file is damaged while it runs says so where it meets it', async () => {
  const { server, data, file, job } = await serverWithJob()
  const store = await openStore(data)
  const why = { kind: 'skipped', body: { reason: 'x'.repeat(3000) }, at: new Date(2031, 4, 7) }
  for (let version = 1; version < 99; version++) await store.jobs.append(1, version, why)
  await store.close()
  spoil(file)
  const page = await fetch(server.address + job)
  expect(page.status).toBe(503)
  expect(textIn(await page.text())).toContain('coilhound.sqlite is damaged')
  expect((await fetch(`${server.address}/jobs/new`)).status).toBe(200)
  const { complained } = await server.stop('SIGTERM')
  expect(complained).toContain('database disk image is malformed')
})

it('a server with one damaged event names it, and shows all other jobs', async () => {
  const { server, file, job } = await serverWithJob()
  const other = (await send(server, '/jobs', openForm(kase))).headers.get('location')!
  expect((await send(server, `${other}/readings`, reading)).status).toBe(303)
  const editor = new DatabaseSync(file)
  editor.exec('UPDATE job_events SET body = \'{"check": \' WHERE job = 2 AND seq = 2')
  editor.close()

  const page = await fetch(server.address + other)
  expect(page.status).toBe(500)
  expect(textIn(await page.text())).toContain('Event 2 of job 2 is damaged')
  expect((await fetch(server.address + job)).status).toBe(200)
  const list = await fetch(`${server.address}/jobs`)
  expect(list.status).toBe(200)
  expect(await list.text()).toContain(`href="${other}"`)
  expect((await send(server, `${job}/readings`, reading)).status).toBe(303)
  const { complained } = await server.stop('SIGTERM')
  expect(complained).toMatch(/Event 2 of job 2 is damaged.*JSON/)
})
