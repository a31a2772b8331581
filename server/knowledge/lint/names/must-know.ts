import { closest, distance } from 'fastest-levenshtein'
import type { Report } from '../report.ts'

/** Reports each of `names` that is not `among` those that there are, with the one that was meant. */
export type MustKnow = (
  entry: object,
  path: readonly PropertyKey[],
  what: string,
  names: readonly string[] | undefined,
  among: readonly string[],
) => void

export function mustKnowIn(report: Report): MustKnow {
  return (entry, path, what, names, among) => {
    for (const name of names ?? []) {
      if (!among.includes(name)) {
        report.add(entry, path, `no ${what} is called ${name}: ${meant(name, among)}`)
      }
    }
  }
}

/** A list of more names than this tells nobody which one was meant. */
const longest = 12

function meant(name: string, among: readonly string[]): string {
  if (among.length === 0) return 'there is none yet'
  const nearest = closest(name, among)
  if (distance(name, nearest) * 3 <= name.length) return `did you mean ${nearest}?`
  if (among.length <= longest) return `there is ${among.join(', ')}`
  const nearer = among.toSorted((a, b) => distance(name, a) - distance(name, b))
  return `the nearest are ${nearer.slice(0, 6).join(', ')}, and there are ${among.length - 6} more`
}

export function listOf(name: string | undefined): string[] {
  return name === undefined ? [] : [name]
}
