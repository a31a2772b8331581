import { connect } from 'node:net'
import { text } from 'node:stream/consumers'
import { onTestFinished } from 'vitest'
import type { AppParts } from '../../server/app.ts'
import { readyApp } from './app.ts'

/** Sends these characters on a line of their own, and resolves to what came back once the line is closed. */
export type Exchange = (characters: string) => Promise<string>

/** A listening app that is spoken to in bytes: for what no client of HTTP would send. */
export async function rawExchange(parts: Partial<AppParts> = {}): Promise<Exchange> {
  const { app } = await readyApp(parts)
  const { port } = new URL(await app.listen({ host: '127.0.0.1', port: 0 }))
  return (characters) => {
    const line = connect(Number(port), '127.0.0.1')
    onTestFinished(() => void line.destroy())
    line.write(characters)
    return text(line)
  }
}
