import type { CheckCard } from '../../server/knowledge/case.ts'
import type { CheckOnPage } from './page.ts'
import type { Incident } from './record.ts'
import { differ, type Seen, seenInWords } from './seen.ts'
import type { Standing } from './world/standing.ts'

/** What came of a look, and how the machine stood at that moment. */
export interface Looked {
  readonly seen: Seen
  /** After the last step. */
  readonly standing: Standing
  readonly before: Standing
}

/**
 * What the page brought about, from what was seen and what would have been seen on a machine that is all together
 * but for what the check itself needs.
 *
 * @param barsItself on any machine of the kind its own set-ups, in the order printed, leave no way to make it
 */
export function incidents(
  { title, words }: CheckOnPage,
  card: CheckCard,
  { seen, before: standing }: Looked,
  meant: Looked,
  barsItself: boolean,
): Incident[] {
  const at = (kind: Incident['kind'], says: string): Incident => ({
    kind,
    check: card.id,
    says: `“${title}”: ${says}`,
  })
  if (seen.kind === 'nothing' && seen.barred) {
    return barsItself
      ? [at('own way barred', seen.why)]
      : [at('barred', `${seen.why}; ${changed(standing, meant.before)}`)]
  }
  const turns = card.engine !== 'stopped' && seen.kind !== 'nothing'
  const off = standing.apart.has('stop-plug') && !/stop wire is unplugged|stop circuit/i.test(words)
  const needless = [...standing.apart].filter(
    (plug) => !meant.before.apart.has(plug) && plug !== 'stop-plug',
  )
  return [
    ...(meant.seen.kind !== 'nothing' && differ(seen, meant.seen)
      ? [
          at(
            'spoilt',
            `read ${seenInWords(seen)}, all together ${seenInWords(meant.seen)}; ${changed(standing, meant.before)}`,
          ),
        ]
      : []),
    ...(turns && off ? [at('stop wire off', `engine ${card.engine}, stop wire apart`)] : []),
    ...(turns && needless.length > 0
      ? [at('plug apart', `${card.engine} with ${needless.join(', ')} apart`)]
      : []),
  ]
}

/** What goes by itself, or says only what was tried. */
const passing: readonly (keyof Standing)[] = ['hotAt', 'couldNotRun']

/** What stands otherwise than the check means it to. */
export function changed(now: Standing, meant: Standing): string {
  const more = (a: ReadonlySet<string>, b: ReadonlySet<string>) =>
    [...a].filter((each) => !b.has(each))
  const fields = ['apart', 'off', 'leadOff', 'capOff', 'newPlug', 'swapped', 'standIns'] as const
  const sets = fields.flatMap((field) =>
    more(now[field], meant[field]).map((name) => `${field === 'apart' ? '' : `${field} `}${name}`),
  )
  const rest = Object.keys(now).filter((key) => {
    const field = key as keyof Standing
    return (
      !(fields as readonly string[]).includes(key) &&
      !passing.includes(field) &&
      JSON.stringify(now[field]) !== JSON.stringify(meant[field])
    )
  })
  return `left otherwise: ${[...sets, ...rest].join(', ') || 'nothing'}`
}
