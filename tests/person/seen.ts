/** What came back from a check, as the person would put it into the form. */
export type Seen =
  | { readonly kind: 'typed'; readonly text: string }
  | { readonly kind: 'answer'; readonly id: string }
  | { readonly kind: 'nothing'; readonly why: string; readonly barred: boolean }

export const typed = (text: string): Seen => ({ kind: 'typed', text })
export const answer = (id: string): Seen => ({ kind: 'answer', id })

/** It cannot be seen or told here, whatever the machine's state. */
export const cannotTell = (why: string): Seen => ({ kind: 'nothing', why, barred: false })

/** The way to it is barred as the machine stands. */
export const barred = (why: string): Seen => ({ kind: 'nothing', why, barred: true })

/** What the person says to the page, for the log. */
export function seenInWords(seen: Seen): string {
  switch (seen.kind) {
    case 'typed':
      return seen.text
    case 'answer':
      return seen.id
    case 'nothing':
      return `could not tell: ${seen.why}`
  }
}

/** Whether two readings would lead to another judgement: other answers, OL or not, or a fifth apart. */
export function differ(a: Seen, b: Seen): boolean {
  if (a.kind !== b.kind) return true
  if (a.kind === 'answer' && b.kind === 'answer') return a.id !== b.id
  if (a.kind !== 'typed' || b.kind !== 'typed') return false
  const [x, y] = [lastNumber(a.text), lastNumber(b.text)]
  if (x === null || y === null) return x !== y
  return Math.abs(x - y) > 0.2 * Math.max(x, y) && Math.abs(x - y) > 0.3
}

/** Null for OL. */
function lastNumber(text: string): number | null {
  const words = text.split(' ').map(Number.parseFloat)
  const last = words.at(-1)!
  if (Number.isNaN(last)) return null
  const prefix = { k: 1e3, M: 1e6 }[text.at(-1)!] ?? 1
  return last * prefix
}

/** "If it shows OL or jumps, enter that first. Then clean the pins and make one more take." */
export const asksForTake = (steps: readonly string[], seen: Seen): boolean =>
  seen.kind === 'typed' &&
  seen.text.includes('OL') &&
  steps.some((step) => /shows OL.* make one more take/i.test(step))
