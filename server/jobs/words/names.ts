import { named } from '../../diagnosis/model/named.ts'
import type { Case } from '../../knowledge/case.ts'
import { printValue } from '../../measure/reading/print.ts'
import type { MeterAtHand } from '../measuring/meter-at-hand.ts'
import type { Repaired } from '../record/events.ts'
import type { Recorded } from '../record/fold.ts'
import { listed, sentence, the, upperFirst } from './sentences.ts'

/** What a suspect is called in a sentence, without an article. */
export function suspectName(kase: Case, part: string | null): string {
  return part === null ? 'something that is not listed here' : named(kase.parts, part).name
}

/** "the start exciter and the left plug lead" */
export function partNames(kase: Case, parts: readonly string[]): string {
  return listed(parts.map((part) => the(kase.parts.get(part)?.name ?? part)))
}

/** "the start exciter and “A nest in the box”": what was repaired, the parts by name, all else as it was written down. */
export function repairedNames(
  kase: Case,
  repairs: readonly Pick<Repaired, 'parts' | 'cause'>[],
): string {
  return listed(
    repairs.flatMap(({ parts, cause }) => [
      ...parts.map((part) => the(kase.parts.get(part)?.name ?? part)),
      ...(cause === undefined ? [] : [asWritten(cause)]),
    ]),
  )
}

/** In quotation marks, to stand within a sentence. */
export const asWritten = (text: string): string => `“${text.replace(/\.+$/, '')}”`

/** "Common hand meter, leads zeroed at 0.2 Ω" */
export function meterWords({ name, zero }: MeterAtHand): string {
  return `${name}, ${zero === undefined ? 'leads not zeroed' : `leads zeroed at ${printValue(zero, 'Ω')}`}`
}

export const placeWords = { bench: 'At the bench', trailside: 'At the trailside' } as const
/** Who is at the machine. */
export const whoWords = {
  self: 'I am at the machine',
  owner: 'An owner, by phone',
  apprentice: 'An apprentice, with me',
} as const
export const engineWords = { cold: 'Cold', hot: 'Hot' } as const

/** Who took a reading, to stand after "taken by"; empty where nobody is named. What an owner told is theirs, whoever wrote it down. */
export function takerOf({ by, conditions }: Pick<Recorded, 'by' | 'conditions'>): string {
  if (conditions.who === 'owner') return 'the owner, by phone'
  if (conditions.who !== 'apprentice') return by
  return by === '' ? 'an apprentice' : `an apprentice with ${by}`
}

/** "They have burnt or pitted faces." */
export function howItFailed({ faults }: Pick<Case, 'faults'>, fault: string): string {
  const { pronoun, says } = faults.get(fault) ?? { pronoun: 'it', says: fault }
  return sentence(upperFirst(`${pronoun} ${says}`))
}
