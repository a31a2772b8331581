/** Names of checks are words joined by dots, so that they can stand in an address. */
export function nameOf(...words: readonly (string | undefined)[]): string {
  return words.filter((word) => word !== undefined).join('.')
}

/** The name of the kind that a check was made from: its own up to the first dot. */
export const kindNameOf = (check: string): string => check.split('.')[0] ?? check

/** Two ways of reaching the same property at the same plug are told apart by a number. */
export function numbered<Named extends { readonly id: string }>(checks: readonly Named[]): Named[] {
  const seen = new Map<string, number>()
  return checks.map((check) => {
    const count = (seen.get(check.id) ?? 0) + 1
    seen.set(check.id, count)
    return count === 1 ? check : { ...check, id: nameOf(check.id, String(count)) }
  })
}
