/** Gives what is kept under a name, or works it out and keeps it. */
export type Latest<Result> = (name: string, workOut: () => Result) => Result

/** Keeps results for that many names; what was asked for longest ago goes first. */
export function latest<Result extends object>(most: number): Latest<Result> {
  const kept = new Map<string, Result>()
  return (name, workOut) => {
    const result = kept.get(name) ?? workOut()
    // At the end of the order again.
    kept.delete(name)
    kept.set(name, result)
    const [oldest] = kept.keys()
    if (kept.size > most && oldest !== undefined) kept.delete(oldest)
    return result
  }
}

/** The same for each of several things, for as long as the thing is there. */
export function latestOf<Thing extends object, Result extends object>(
  most: number,
): (thing: Thing, ...asked: Parameters<Latest<Result>>) => Result {
  const all = new WeakMap<Thing, Latest<Result>>()
  return (thing, name, workOut) => {
    const own = all.get(thing) ?? latest<Result>(most)
    all.set(thing, own)
    return own(name, workOut)
  }
}
