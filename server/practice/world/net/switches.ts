import { named } from '../../../diagnosis/model/named.ts'
import { node } from '../node.ts'
import { partNamed } from '../sheet.ts'
import type { Resistor } from '../solve.ts'
import { effectNow, type Moment } from './moment.ts'

/** How the contact of a part stands now; undefined for what is no switch. */
export function contactOf(
  { truth: { knowledge, machine }, worked }: Moment,
  part: string,
): 'open' | 'closed' | undefined {
  const { contact } = named(knowledge.partKinds, partNamed(machine, part).kind)
  if (contact === undefined || !worked.has(part)) return contact
  return contact === 'open' ? 'closed' : 'open'
}

/** A switch closes through the ohms of its contact, and opens as far as nothing bridges it. */
export function contactOhms(now: Moment, part: string, stands: 'open' | 'closed'): number {
  const { series = 0, across = Infinity } = effectNow(now, part)
  return stands === 'closed' ? now.truth.good(part).ohms + series : across
}

/** From its feed a key switch closes to one pin at RUN, and to another as well at START. */
export function keySwitches(now: Moment): Resistor[] {
  const { truth, key } = now
  return Object.entries(truth.circuit.keys ?? {}).flatMap(([part, { plug, feed, run, start }]) => {
    const { ohms } = truth.good(part)
    const lost = (of: 'run' | 'run-at-start' | 'start') => effectNow(now, part, of).series ?? 0
    const { across = Infinity } = effectNow(now, part, 'run')
    const pin = (of: number) => node([plug, of], 'own')
    const running = ohms + lost('run') + (key === 'start' ? lost('run-at-start') : 0)
    return [
      [pin(feed), pin(run), key === 'off' ? across : running],
      [pin(feed), pin(start), key === 'start' ? ohms + lost('start') : Infinity],
    ] satisfies Resistor[]
  })
}
