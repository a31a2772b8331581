import { connect } from 'node:net'
import { Readable } from 'node:stream'
import { onTestFinished } from 'vitest'
import type { AppParts } from '../../server/app.ts'
import { type ReadyApp, readyApp } from './app.ts'

/** A listening app that is spoken to in bytes: for what no client of HTTP would send. */
export interface RawApp extends ReadyApp {
  /** Sends this on a line of its own, and resolves to what came back once the server closed the line. */
  exchange(sent: Iterable<string> | AsyncIterable<string>): Promise<string>
}

export async function rawApp(parts: Partial<AppParts> = {}): Promise<RawApp> {
  const ready = await readyApp(parts)
  const { port } = new URL(ready.address)
  return { ...ready, exchange: (sent) => exchanged(Number(port), sent) }
}

function exchanged(port: number, sent: Iterable<string> | AsyncIterable<string>): Promise<string> {
  const line = connect(port, '127.0.0.1')
  onTestFinished(() => void line.destroy())
  let answer = ''
  line.setEncoding('utf8').on('data', (text) => {
    answer += text
  })
  // Whoever is still sending when the line is closed hears of that as an error.
  line.on('error', () => {})
  Readable.from(sent).pipe(line, { end: false })
  return new Promise((closed) => line.on('close', () => closed(answer)))
}
