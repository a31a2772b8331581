import type { About } from './schema/check-kind.ts'

type Kind = About['kind']

/** One kind of `about`; told so that the compiler sees a table's row and its argument belong together. */
type Of<K extends Kind> = { [P in K]: Extract<About, { readonly kind: P }> }[K]

/** What is done for each kind of `about`, with whatever else it takes. */
export type ByAbout<More extends readonly unknown[], Result> = {
  readonly [K in Kind]: (about: Of<K>, ...more: More) => Result
}

/** Takes the row of the table that `about` is a case of. */
export function byAbout<K extends Kind, More extends readonly unknown[], Result>(
  table: { readonly [P in K]: (about: Of<P>, ...more: More) => Result },
  about: Of<K>,
  ...more: More
): Result {
  const kind: K = about.kind
  return table[kind](about, ...more)
}
