import type { Testability } from '../diagnosis/testability/testability.ts'

/** "97.3 %"; all or nothing is said only where it is so. */
export function share(part: number): string {
  const said = (100 * part).toFixed(1)
  if (said === '100.0') return part < 1 - rounding ? '>99.9\u00a0%' : '100\u00a0%'
  if (said === '0.0') return part > rounding ? '<0.1\u00a0%' : '0\u00a0%'
  return `${said}\u00a0%`
}

/** Sums of some hundred shares miss 1 by less than this. */
const rounding = 1e-9

/** "12.4 min" */
export const minutes = (count: number): string => `${count.toFixed(1)}\u00a0min`

/** Groups that no check tells apart, each once, with all the faults that end in it. */
export function groupsOf({ groups }: Testability): {
  readonly parts: readonly string[]
  readonly faults: readonly string[]
}[] {
  const found = new Map<string, { parts: readonly string[]; faults: string[] }>()
  for (const { parts, fault } of groups) {
    const name = [...parts].sort().join()
    const known = found.get(name)
    if (known === undefined) found.set(name, { parts, faults: [fault] })
    else known.faults.push(fault)
  }
  return [...found.values()]
}

/** What the words over the figures mean. */
export const meaning =
  'Each single fault is walked, every check answered as that fault typically would be; shares are ' +
  'weighted by how often a fault comes in. Detected, isolated and ambiguity group as in IEEE 1522: ' +
  'the share isolated to so many parts is of the detected faults.'

/** Where a case could not be worked out. */
export const failed = 'Could not be worked out. The server’s log says why.'
