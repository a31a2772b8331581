import type { Response } from 'supertest'
import { textIn } from './page.ts'

/** What a refused post came back with, as a person finds it on the page. */
export interface Refusal {
  /** The sentences that say what is wrong. */
  readonly says: readonly string[]
  /** All that can be read on the page, typed fields included. */
  readonly holds: string
}

/** Reads a page that refuses something; throws where it is no page. */
export function refusalIn({ headers, text }: Response): Refusal {
  const type = String(headers['content-type'])
  if (!type.startsWith('text/html') || !text.includes('<main')) throw new Error(`No page: ${type}`)
  const alerts = text.matchAll(/<(p|div)\b[^>]*\bclass="(?:problem|heed|lead)[^>]*>.*?<\/\1>/gs)
  const values = [...text.matchAll(/<input\b[^>]*\bvalue="([^"]*)"[^>]*>/g)]
    .filter(([input]) => !/type="(?:hidden|radio|checkbox)"/.test(input))
    .map(([, value]) => value)
  return {
    says: [...alerts].map(([alert]) => textIn(alert)),
    holds: `${textIn(text)} ${textIn(values.join(' '))}`,
  }
}
