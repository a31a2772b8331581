import { textOf } from '../../web/fields.ts'
import type { Asked } from '../standing/asked.ts'

export type ReadProof =
  | { readonly ok: true; readonly gone: boolean; readonly written: { readonly read?: string } }
  | { readonly ok: false; readonly asked: Asked }

/** Longer than what is read at a proof, in characters. */
const longest = 300

/** Whether a form says that the complaint is gone, and what was read meanwhile; or what is wrong in it. */
export function readProof(body: unknown): ReadProof {
  const choice = textOf(body, 'choice')
  const read = readIn(body)
  if (choice !== 'gone' && choice !== 'still-there') {
    return { ok: false, asked: { proofRefused: { read }, notice: chooseOutcome } }
  }
  if (read.length > longest) {
    const problem = `Keep what was read to ${longest} characters.`
    return { ok: false, asked: { proofRefused: { read, problem } } }
  }
  return { ok: true, gone: choice === 'gone', written: read === '' ? {} : { read } }
}

/** The form with what was typed into it. */
export const proofAgain = (body: unknown): Asked => ({ proofRefused: { read: readIn(body) } })

const readIn = (body: unknown): string => textOf(body, 'read').trim()

const chooseOutcome = 'Choose whether the complaint is gone or still there.'
