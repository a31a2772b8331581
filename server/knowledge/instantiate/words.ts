import type { Machine } from '../schema/machine.ts'
import type { Proof } from '../schema/proof.ts'
import { partsOf } from './where/outputs.ts'

/** The placeholders that texts in a check may hold, besides the names of roles. */
export const placeholders = [
  'part',
  'other',
  'output',
  'place',
  'pins',
  'wires',
  'limits',
  'connector',
  'role',
  'ground',
  'run',
  'start',
  'off',
  'turn',
  'held',
  'work',
  'gap',
] as const

/** What stands for each placeholder here: one of those above, or a role of the machine. */
export type Fillings = Readonly<Record<string, string>>

const inBraces = /\{([^{}]*)\}/g

/** With the article before it, if there is one. */
const withArticle = /(?:\b([Tt]he) )?\{([^{}]*)\}/g

/**
 * Fills placeholders in braces, with a capital where a sentence begins. `{igniter|module}` is the first of
 * these that there is. What goes by a number has no article: "the {output}" is "cylinder 3". A sentence that names a role which the machine has not is left out, and any other
 * placeholder without a filling becomes nothing, with its space.
 */
export function fill(text: string, fillings: Fillings): string {
  if (text.includes('{')) return filled(text, fillings)
  const known = plain.get(text) ?? filled(text, fillings)
  plain.set(text, known)
  return known
}

/** Texts without a placeholder, which is most of them, read the same in every case. */
const plain = new Map<string, string>()

function filled(text: string, fillings: Fillings): string {
  const kept = text
    .split(betweenSentences)
    .filter((sentence) => !namesMissingRole(sentence, fillings))
    .join(' ')
  const whole = kept.replace(withArticle, (_, article: string, names: string, at: number) => {
    const filling =
      namesIn(names)
        .map((name) => fillings[name])
        .find(Boolean) ?? ''
    const said = article && !goesByNumber.test(filling) ? `${article} ${filling}` : filling
    return beginsSentence(kept, at) ? said.charAt(0).toUpperCase() + said.slice(1) : said
  })
  return whole
    .replace(/(^|[.:] )\./g, '$1')
    .replace(/ {2,}/g, ' ')
    .replace(/ ([,.;:])/g, '$1')
    .trim()
}

/** Each of these texts filled, without those that say nothing of this machine. */
export const fillAll = (texts: readonly string[], fillings: Fillings): string[] =>
  texts.map((text) => fill(text, fillings)).filter(Boolean)

const goesByNumber = /^\w+ \d+( and \w+ \d+)*$/

const betweenSentences = /(?<=[.?!]) +/

/** A text cut into its sentences. */
export const sentencesIn = (text: string): string[] => text.split(betweenSentences).filter(Boolean)

function namesMissingRole(sentence: string, fillings: Fillings): boolean {
  return [...sentence.matchAll(inBraces)].some(([, names = '']) =>
    namesIn(names).every((name) => !isPlaceholder(name) && !fillings[name]),
  )
}

const isPlaceholder = (name: string): boolean => (placeholders as readonly string[]).includes(name)

const beginsSentence = (text: string, at: number): boolean => /(^|[.?!] )$/.test(text.slice(0, at))

const namesIn = (names: string): string[] => names.split('|')

/** The names in braces that are neither a placeholder nor a role. */
export function unknownPlaceholders(text: string, roles: readonly string[]): string[] {
  return [...text.matchAll(inBraces)]
    .flatMap(([, names = '']) => namesIn(names))
    .filter((name) => !isPlaceholder(name) && !roles.includes(name))
}

/**
 * What stands for a machine's own words in any text: how it is turned, how its controls stand, and by their
 * role the names of its parts, as seen from an output or from the whole machine.
 */
export function fillingsOf(machine: Machine, output = ''): Fillings {
  const known = kept.get(machine) ?? new Map<string, Fillings>()
  kept.set(machine, known)
  const fillings = known.get(output) ?? worked(machine, output || undefined)
  known.set(output, fillings)
  return fillings
}

/** By machine and output: every check, gate, set-up and part of a case asks for them. */
const kept = new WeakMap<Machine, Map<string, Fillings>>()

function worked(machine: Machine, output: string | undefined): Fillings {
  const roles = new Set(machine.parts.map(({ role }) => role))
  const names = [...roles].map((role) => [role, inWords(partsOf(machine, role, output))] as const)
  const { stop, sparkGap, turn = usualTurn, held = usualHeld, work = usualWork } = machine
  const gap = `${sparkGap.mm} mm`
  return {
    ...Object.fromEntries(names),
    ...{ turn, gap, held: withinSentence(held), work },
    ...(stop && {
      run: withinSentence(stop.run),
      start: startOf(stop),
      off: withinSentence(stop.off),
    }),
  }
}

/** How it stands where it may run. */
const startOf = ({ run, start }: NonNullable<Machine['stop']>): string =>
  [run, start ?? []].flat().map(withinSentence).join(', ')

/** As a sentence goes on with it; where one begins with it, it gets its capital back. */
const withinSentence = (says: string): string => says.charAt(0).toLowerCase() + says.slice(1)

/** How an engine is turned whose sheet says nothing else. */
const usualTurn = 'pull the rope'

/** How one is worked that has no need to stay where it is. */
const usualWork = 'work it as when it fails'

/** How a machine is kept from moving off whose sheet says nothing else. */
const usualHeld = 'out of gear, and brake on, made fast, or a driven wheel or track lifted'

function inWords(parts: readonly { readonly name: string }[]): string {
  const names = parts.map(({ name }) => name)
  const last = names.pop() ?? ''
  return names.length === 0 ? last : `${names.join(', ')} and ${last}`
}

/** A proof with its words filled in. */
export function filledProof(proof: Proof, fillings: Fillings): Proof {
  const entries = Object.entries(proof).map(([how, says]) => [how, fill(says, fillings)])
  return Object.fromEntries(entries)
}
