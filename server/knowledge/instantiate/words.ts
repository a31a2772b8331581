/** The placeholders that texts in a check may hold. */
export const placeholders = [
  'part',
  'output',
  'place',
  'pins',
  'wires',
  'limits',
  'connector',
  'role',
  'ground',
  'gap',
  'run',
  'off',
] as const
export type Placeholder = (typeof placeholders)[number]
export type Fillings = Readonly<Partial<Record<Placeholder, string>>>

const inBraces = /\{([^{}]*)\}/g

/** Fills placeholders in braces; one that has no filling here becomes nothing, with its space. */
export function fill(text: string, fillings: Fillings): string {
  const filled = text.replace(inBraces, (_, name: string) => fillings[name as Placeholder] ?? '')
  return filled
    .replace(/(^|[.:] )\./g, '$1')
    .replace(/ {2,}/g, ' ')
    .replace(/ ([,.;:])/g, '$1')
    .trim()
}

/** The names in braces that are no placeholder. */
export function unknownPlaceholders(text: string): string[] {
  return [...text.matchAll(inBraces)]
    .map(([, name = '']) => name)
    .filter((name) => !(placeholders as readonly string[]).includes(name))
}
