import type { CheckCard, SetupCard } from '../../knowledge/case.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'

/** Minutes of the round, and when the engine last turned; null where it has not. */
export interface Clock {
  readonly minutes: number
  readonly turnedAt: number | null
}

/** Before anything was done: whoever brought the machine let it stand. */
export const atRest: Clock = { minutes: 0, turnedAt: null }

/** Minutes that somebody waits before a check, and during it, besides its own. */
export function waitFor(
  knowledge: Knowledge,
  card: CheckCard,
  needs: readonly SetupCard[],
  clock: Clock,
): number {
  const [first = '', ...later] = card.do
  const turns = card.engine !== 'stopped'
  const before = [...needs.map((setup) => setup.do), first, ...(turns ? [] : later)]
  // What it says to wait for later on is what the check itself has turned.
  const during = turns ? later : []
  const waits = during.reduce((sum, text) => sum + minutesIn(knowledge, text), 0)
  return left(longest(knowledge, before), clock) + waits
}

/** Minutes that it takes to put these back, and those of them that somebody waits before that. */
export function minutesBack(
  knowledge: Knowledge,
  back: readonly SetupCard[],
  clock: Clock,
): { readonly minutes: number; readonly waited: number } {
  const ways = back.flatMap(({ undo }) => undo ?? [])
  const says = ways.map((undo) => undo.do)
  const waited = left(longest(knowledge, says), clock)
  return { minutes: ways.reduce((sum, { minutes }) => sum + minutes, waited), waited }
}

/** The clock after a check that took so many minutes. */
export function after(
  { minutes, turnedAt }: Clock,
  { engine, asked }: CheckCard,
  spent: number,
): Clock {
  const now = minutes + spent
  return { minutes: now, turnedAt: engine === 'stopped' || asked ? turnedAt : now }
}

const longest = (knowledge: Knowledge, texts: readonly string[]): number =>
  Math.max(0, ...texts.map((text) => minutesIn(knowledge, text)))

/** What is left of a wait that begins when the engine last turned. */
const left = (wait: number, { minutes, turnedAt }: Clock): number =>
  turnedAt === null ? 0 : Math.max(0, wait - (minutes - turnedAt))

/** Minutes that a text says to wait, as the cautions have it. */
function minutesIn({ cautions }: Knowledge, text: string): number {
  const said = text.toLowerCase()
  const rows = Object.values(cautions.cautions).flatMap(({ waits }) => waits ?? [])
  return rows.reduce(
    (sum, { words, minutes }) => sum + (said.split(words.toLowerCase()).length - 1) * minutes,
    0,
  )
}
