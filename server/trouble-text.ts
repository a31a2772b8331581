import { StoreTrouble } from './store/trouble.ts'
import type { ErrorText } from './web/errors.ts'

/** What a page says of trouble with the store: a damaged job stays so, the rest is over once it is mended. */
export function textOfTrouble(error: unknown): ErrorText | undefined {
  if (!(error instanceof StoreTrouble)) return undefined
  const { kind, title, message: says } = error
  return { status: kind === 'damaged event' ? 500 : 503, title, says }
}
