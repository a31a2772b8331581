import type { Knowledge } from '../../knowledge/knowledge.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import { plainWords, slips } from '../../web/typed/spelling.ts'
import { upperFirst } from '../words/sentences.ts'
import type { Way } from './views.ts'

/** As many as a phone shows beside the machines. */
const mostParts = 6

/**
 * Where the limits of the parts are that fit what was typed: each word must begin some word of the part's
 * name or of its machine's, give or take a slip of the finger, and one of them must be the part's. None
 * where nothing was typed.
 */
export function findParts(knowledge: Knowledge, typed: string): readonly Way[] {
  const words = plainWords(typed)
  if (words.length === 0) return []
  const begins = (word: string, named: readonly string[]) =>
    named.some((each) => slips(word, each) !== null)
  return [...knowledge.machines.values()]
    .flatMap((machine) => {
      const ofMachine = plainWords(`${machineName(machine)} ${machine.family}`)
      return machine.parts
        .filter(({ limits }) => limits !== undefined)
        .filter(({ name, assembly = '' }) => {
          const own = plainWords(name)
          const ofAssembly = plainWords(assembly)
          // What it comes off with is meant only where it is spelt right.
          const isOwn = (word: string) =>
            begins(word, own) || ofAssembly.some((each) => each.startsWith(word))
          return words.some(isOwn) && words.every((word) => isOwn(word) || begins(word, ofMachine))
        })
        .map(({ name }) => ({
          href: `/machines/${encodeURIComponent(machine.id)}?${new URLSearchParams({ find: name })}`,
          text: `${upperFirst(name)}, ${machine.name}`,
        }))
    })
    .slice(0, mostParts)
}
