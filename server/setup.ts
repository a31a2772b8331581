import type { FastifyInstance } from 'fastify'
import type { Settings } from './settings.ts'
import { SetupProblem } from './setup-problem.ts'
import { DriverMissing } from './store/driver.ts'
import { openStore, type Store } from './store/open.ts'
import { StoreTrouble } from './store/trouble.ts'

/** Opens the data folder, or says why it cannot be used. */
export async function openData({ data }: Settings): Promise<Store> {
  try {
    return await openStore(data)
  } catch (problem) {
    throw new SetupProblem(sentenceFor(problem, data), { cause: problem })
  }
}

function sentenceFor(problem: unknown, data: string): string {
  if (problem instanceof DriverMissing) {
    // Of a binary that cannot be loaded the system says why in one line; hints may follow it.
    const [why] = String(Object(problem.cause).message).split('\n')
    return `The database driver cannot be loaded; run npm install again with this Node, ${process.version} (${why}).`
  }
  const reason =
    problem instanceof StoreTrouble ? lowerFirst(problem.message) : reasonFor(problem, fileInTheWay)
  return `The data folder ${data} cannot be used: ${reason}`
}

const notAFolder = 'there is a file where a folder should be; set COILHOUND_DATA.'

const fileInTheWay: Reasons = { ENOTDIR: notAFolder, EEXIST: notAFolder }

const lowerFirst = (sentence: string) => sentence.charAt(0).toLowerCase() + sentence.slice(1)

/** Listens and returns the address, or says why that cannot be. */
export async function listen(app: FastifyInstance, { host, port }: Settings): Promise<string> {
  try {
    return await app.listen({ host, port })
  } catch (problem) {
    await app.close()
    const reason = reasonFor(problem, listenReasons)
    throw new SetupProblem(`Cannot listen on ${host}, port ${port}: ${reason}.`)
  }
}

const listenReasons: Reasons = {
  EADDRINUSE: 'the port is taken by another program, perhaps by Coilhound itself; set PORT',
  EACCES: 'this user may not use that port; set PORT to one above 1023',
  EADDRNOTAVAIL: 'this machine has no such address; set HOST',
  ENOTFOUND: 'there is no host of that name; set HOST',
  EAI_AGAIN: 'the name of the host cannot be looked up; set HOST',
}

/** What to say for each code that the system or SQLite gives. */
type Reasons = Readonly<Record<string, string>>

/** @throws the problem itself where it is none of those: then it is a bug, and keeps its stack. */
function reasonFor(problem: unknown, reasons: Reasons): string {
  const reason = reasons[String(Object(problem).code)]
  if (reason === undefined) throw problem
  return reason
}
