import type { SentFact } from '../../web/kept.ts'
import { type Asked, wrongIn } from '../standing/asked.ts'

/** The forms that stand on a page, each for what comes back to it. */
export interface FormsThere {
  /** Of a check, with what it has fields for. */
  readonly check?: {
    readonly id: string
    readonly form: {
      readonly field?: object
      readonly warmth?: object
      readonly rpm?: object
      readonly skip?: object
    }
    readonly meter?: { readonly zero?: object }
  }
  /** More touches, beside a reading. */
  readonly takes?: boolean
  readonly repair?: { readonly written?: { readonly cause?: string }; readonly proof?: object }
}

/** What stands above everything: a sentence, and what was sent and has no field on the page. */
export interface LeftOver {
  readonly notice?: string
  readonly sent?: readonly SentFact[]
}

/**
 * Of what could not be taken, whatever has no form on this page by now: the sentence that says why goes above everything,
 * and so does what was typed, so that nothing is lost.
 */
export function leftOver(asked: Asked, there: FormsThere): LeftOver {
  const fields = fieldsBack(asked, there)
  const notice = asked.notice ?? (fields.size === 0 ? wrongIn(asked) : undefined)
  const sent = (asked.sent ?? []).filter(({ name }) => !fields.has(name))
  return { ...(notice !== undefined && { notice }), ...(sent.length > 0 && { sent }) }
}

/** The fields, by name, that have what was typed in them again. */
function fieldsBack(asked: Asked, { check, takes, repair }: FormsThere): ReadonlySet<string> {
  const { refused, skipRefused, takeRefused, zeroRefused, repairRefused, proofRefused } = asked
  const { field, warmth, rpm, skip } = check?.form ?? {}
  const isBack = check !== undefined && refused?.check === check.id
  return new Set([
    // What an owner is asked has no field, but the sentence stands at the answers.
    ...(isBack ? ['check'] : []),
    ...(isBack && field ? ['typed', 'choice'] : []),
    ...(isBack && warmth ? ['celsius'] : []),
    ...(isBack && rpm ? ['rpm'] : []),
    ...(skipRefused && skip && skipRefused.check === check?.id ? ['reason'] : []),
    ...(takeRefused && takes ? ['typed', 'choice'] : []),
    ...(zeroRefused && check?.meter?.zero ? ['zero'] : []),
    ...(proofRefused && repair?.proof ? ['read', 'choice'] : []),
    ...(repairRefused && repair?.written ? ['note', 'price', 'minutes', 'choice'] : []),
    ...(repairRefused && repair?.written?.cause !== undefined ? ['cause'] : []),
  ])
}
