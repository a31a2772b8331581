import { join } from 'node:path'
import formbody from '@fastify/formbody'
import view from '@fastify/view'
import { DatabaseSync } from '@photostructure/sqlite'
import { Eta } from 'eta'
import fastify from 'fastify'
import { makeDurable } from '../../server/store/durable.ts'

/**
 * The least that such a server could do: a form is taken, one row written as durably as ours, and a
 * static page of so many bytes rendered. Started with the number of bytes.
 */
const file = new DatabaseSync(join(process.env.COILHOUND_DATA!, 'bare.sqlite'))
makeDurable(file)
file.exec('CREATE TABLE rows (id INTEGER PRIMARY KEY, body TEXT)')
const insert = file.prepare('INSERT INTO rows (body) VALUES (?)')

const eta = new Eta()
eta.loadTemplate('@page', 'x'.repeat(Number(process.argv[2])))

const app = fastify()
app.register(formbody)
app.register(view, { engine: { eta }, production: true })
app.post('/rows', async (request, reply) => {
  insert.run(JSON.stringify(request.body))
  return reply.viewAsync('@page')
})
// Also keeps the file from being collected, and closed, while its statement is still in use.
app.addHook('onClose', () => file.close())
console.log(await app.listen({ port: 0, host: '127.0.0.1' }))
