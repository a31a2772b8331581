import type { Case, CheckCard, SetupCard } from '../../server/knowledge/case.ts'

/** What the part of a page that instructs says, list by list. */
export interface Instructions {
  readonly putBack: readonly string[]
  readonly ready: readonly string[]
  readonly steps: readonly string[]
}

/** Whoever does only what a page says, and so knows the machine only by what was done to it. */
export interface LiteralHands {
  /** What is apart, off, fitted or ready now, by name. */
  readonly off: ReadonlySet<string>
  /** Does what comes before the steps, and says what was told to be put back. */
  getReady(said: Instructions): { readonly putBack: readonly string[] }
  /** Does the steps. */
  make(said: Instructions): void
}

const goesBackToo =
  /^You skipped “.*”\. Whatever you had taken off or apart for it goes back too\.$/
const leave = /^Leave (everything else|what is apart or off) as it is: this check needs it so\.$/

/**
 * Hands that know the set-ups of a case by the sentences that make them and put them back.
 *
 * @throws Error where a page says something before its steps that is neither
 */
export function literalHands(kase: Case): LiteralHands {
  const setups = [...kase.checks.values()].flatMap((card) => card.setups)
  const making = new Map(setups.map((setup) => [setup.do, setup]))
  const undoing = new Map(setups.flatMap((setup) => (setup.undo ? [[setup.undo.do, setup]] : [])))
  const off = new Set<string>()
  /** Taken off since a check was made last. */
  let lately: SetupCard[] = []

  const know = (said: string, among: ReadonlyMap<string, SetupCard>) => {
    const setup = among.get(said)
    if (setup === undefined) throw new Error(`nobody knows how to do this: ${said}`)
    return setup
  }
  return {
    off,
    getReady({ putBack, ready }) {
      const back = putBack
        .filter((said) => !goesBackToo.test(said))
        .map((said) => know(said, undoing).id)
      if (back.length < putBack.length) {
        for (const { id } of lately) off.delete(id)
        lately = []
      }
      for (const id of back) off.delete(id)
      const made = ready.filter((said) => !leave.test(said)).map((said) => know(said, making))
      for (const { id } of made) off.add(id)
      lately = [...lately, ...made]
      return { putBack: back }
    },
    make({ steps }) {
      for (const said of steps) {
        const setup = undoing.get(said)
        if (setup) off.delete(setup.id)
      }
      lately = []
      for (const { id, once, undo } of setups) if (once && !undo) off.delete(id)
    },
  }
}

/** Of what is off, what has to be put back some time. */
export function toPutBack({ off }: LiteralHands, { checks }: Case): string[] {
  const setups = [...checks.values()].flatMap((card) => card.setups)
  return [...off].filter((id) => setups.some((setup) => setup.id === id && setup.undo))
}

/** Names of what a check needs. */
export const needsOf = ({ setups }: CheckCard): string[] => setups.map(({ id }) => id)
