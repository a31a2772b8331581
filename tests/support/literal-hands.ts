import type { Case, CheckCard, SetupCard } from '../../server/knowledge/case.ts'
import { lowerFirst } from '../../server/web/words.ts'

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
  /** Does what comes before the steps, and says what was put back, and whether all was sure to be off. */
  getReady(said: Instructions): { readonly putBack: readonly string[]; readonly sure: boolean }
  /** Does the steps. */
  make(said: Instructions): void
}

const unless = 'Unless it is so already: '
const leave = /^Leave (everything else|what is apart, off or fitted) as it is\.$/

/**
 * Hands that know the set-ups of a case by the sentences that make them and put them back.
 *
 * @throws Error where a page says something before its steps that is neither, or has put back what is
 * not off, or made what is so already, without asking first
 */
export function literalHands(kase: Case): LiteralHands {
  const setups = [...kase.checks.values()].flatMap((card) => [...card.setups, ...card.forbids])
  const making = new Map(setups.map((setup) => [setup.do, setup]))
  const undoing = new Map(setups.flatMap((setup) => (setup.undo ? [[setup.undo.do, setup]] : [])))
  const perhaps = new Map(
    [making, undoing].flatMap((known) => [...known].map(([says]) => [lowerFirst(says), says])),
  )
  const lasting = new Map(setups.flatMap((each) => (each.lasts ? [[each.lasts.do, each]] : [])))
  const fades = new Set(
    setups.filter(({ once, undo, lasts }) => lasts || (once && !undo)).map(({ id }) => id),
  )
  const ran = new Set<string>()
  const off = new Set<string>()

  const know = (said: string, among: ReadonlyMap<string, SetupCard>) => {
    const asks = said.startsWith(unless)
    const whole = asks ? perhaps.get(said.slice(unless.length)) : said
    const setup = among.get(whole ?? said)
    if (setup === undefined) throw new Error(`nobody knows how to do this: ${said}`)
    return { id: setup.id, asks: asks || setup.undo === undefined }
  }
  return {
    off,
    getReady({ putBack, ready }) {
      const back = putBack
        .filter((said) => said !== kase.machine.stop?.try)
        .map((said) => {
          const { id, asks } = know(said, undoing)
          if (!off.delete(id) && !asks) throw new Error(`it is not off: ${said}`)
          return id
        })
      for (const said of ready) {
        if (leave.test(said)) continue
        const lasts = lasting.get(said)
        if (lasts) {
          if (!ran.has(lasts.id)) throw new Error(`it was never so: ${said}`)
          off.add(lasts.id)
          continue
        }
        const { id, asks } = know(said, making)
        if (off.has(id) && !asks) throw new Error(`it is so already: ${said}`)
        off.add(id)
        if (fades.has(id)) ran.add(id)
      }
      return {
        putBack: back,
        sure: ![...putBack, ...ready].some((said) => said.startsWith(unless)),
      }
    },
    make({ steps }) {
      for (const said of steps) {
        const setup = undoing.get(said)
        if (setup) off.delete(setup.id)
      }
      for (const id of fades) off.delete(id)
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
