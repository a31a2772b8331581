import { allFits, type Fit } from '../../knowledge/fits.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import { textOf } from '../../web/fields.ts'
import { type Level, levels } from '../record/events.ts'
import { pick, seeded, seedOf } from '../world/chance.ts'

/** The form of a new round, as text. */
export interface RoundForm {
  /** Empty: any. */
  readonly machine: string
  readonly complaint: string
  readonly level: Level
  /** Empty: one of its own. */
  readonly seed: string
  readonly who: string
}

/** Longer than any name or seed that people give. */
const longest = 60

/** A name or a seed that is too long to be kept whole, a sentence: cut short it would be another one. */
export function tooLongIn({ seed, who }: RoundForm): string | null {
  const over = [
    ['The seed', seed],
    ['The name', who],
  ].find(([, text = '']) => text.length > longest)
  if (over === undefined) return null
  const [what, text = ''] = over
  return `${what} is ${text.length} letters long: write it in ${longest} at most.`
}

/** A class hears its seed or reads it off a board: capitals and spaces make no other machine of it. */
export const seedMeant = (typed: string): string => typed.toLowerCase().split(/\s+/).join(' ')

export function roundFormFrom(sent: unknown, who = ''): RoundForm {
  const text = (name: string) => textOf(sent, name).trim()
  const level = levels.find((each) => each === text('level')) ?? 'any'
  return {
    ...{ machine: text('machine'), complaint: text('complaint'), seed: text('seed'), level },
    who: text('learner') || who,
  }
}

/** The machine and the complaint that a form means, any of those that fit by its seed; or a sentence. */
export function fitFor(knowledge: Knowledge, form: RoundForm, seed: string): Fit | string {
  const fits = allFits(knowledge).filter(
    ({ machine, complaint }) =>
      (form.machine === '' || machine.id === form.machine) &&
      (form.complaint === '' || complaint.id === form.complaint),
  )
  if (fits.length > 0) return pick(seeded(seedOf(seed, 'machine')), fits)
  const [machine, complaint] = [
    knowledge.machines.get(form.machine),
    knowledge.complaints.get(form.complaint),
  ]
  if (machine && complaint) {
    return `The ${machineName(machine)} cannot have “${complaint.title}”: choose another complaint, or leave one of the two to chance.`
  }
  return 'There is no such machine or complaint: choose one from the lists.'
}
