import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Machine } from '../../knowledge/schema/index.ts'
import { plainWords, slips } from '../../web/typed/spelling.ts'

/**
 * The machines that fit what was typed, best first: each word must begin some word of the maker, the
 * name or the family, give or take a slip of the finger, or of the description, where it is spelt right.
 * All of them where nothing was typed.
 */
export function findMachines(knowledge: Knowledge, typed: string): readonly Machine[] {
  if (typed.trim() === '') return [...knowledge.machines.values()]
  const words = plainWords(typed)
  const found = indexOf(knowledge).flatMap((entry) => {
    const distance = distanceTo(entry, words)
    return distance === null ? [] : [{ machine: entry.machine, distance }]
  })
  return found.sort((a, b) => a.distance - b.distance).map(({ machine }) => machine)
}

interface Entry {
  readonly machine: Machine
  readonly named: readonly string[]
  readonly described: readonly string[]
}

/** Knowledge does not change while the server runs. */
const indexes = new WeakMap<Knowledge, readonly Entry[]>()

function indexOf(knowledge: Knowledge): readonly Entry[] {
  const kept = indexes.get(knowledge)
  if (kept !== undefined) return kept
  const made = [...knowledge.machines.values()].map((machine) => ({
    machine,
    named: plainWords(`${machine.maker} ${machine.name} ${machine.family}`),
    described: plainWords(machine.about),
  }))
  indexes.set(knowledge, made)
  return made
}

/** The sum over all words; null where one of them fits nothing, or there is none. */
function distanceTo(entry: Entry, words: readonly string[]): number | null {
  if (words.length === 0) return null
  let sum = 0
  for (const word of words) {
    const distance = ofWord(entry, word)
    if (distance === null) return null
    sum += distance
  }
  return sum
}

function ofWord({ named, described }: Entry, word: string): number | null {
  const near = named.flatMap((each) => slips(word, each) ?? [])
  if (near.length > 0) return Math.min(...near)
  return described.some((each) => each.startsWith(word)) ? onlyDescribed : null
}

/** After every machine that is called so, however it was spelt. */
const onlyDescribed = 3
