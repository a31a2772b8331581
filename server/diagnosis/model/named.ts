/**
 * What has that name, where the lint has seen to it that something has.
 *
 * @throws RangeError that says which name is missing.
 */
export function named<T>(all: ReadonlyMap<string, T>, name: string): T {
  return found(all.get(name), name)
}

/** The same in a table as it is written in a file. */
export function entry<T>(table: Readonly<Record<string, T>>, name: string): T {
  return found(table[name], name)
}

function found<T>(what: T | undefined, name: string): T {
  if (what === undefined) throw new RangeError(`nothing is called ${name} here`)
  return what
}
