/**
 * What has that name, where the lint or whoever made the map has seen to it that something has.
 *
 * @throws RangeError that says which name is missing.
 */
export function named<Name extends string | number, T>(all: ReadonlyMap<Name, T>, name: Name): T {
  return found(all.get(name), `nothing is called ${name} here`)
}

/** The same in a table as it is written in a file. */
export function entry<T>(table: Readonly<Record<string, T>>, name: string): T {
  return found(table[name], `nothing is called ${name} here`)
}

/**
 * What has that number in a list, counted from 0: a cut set, its row of chances, an explanation.
 *
 * @throws RangeError that says which number is missing.
 */
export function numbered<T>(all: ArrayLike<T>, number: number): T {
  const one = all[number]
  if (one === undefined) throw new RangeError(`no number ${number} among ${all.length}`)
  return one
}

function found<T>(one: T | undefined, missing: string): T {
  if (one === undefined) throw new RangeError(missing)
  return one
}
