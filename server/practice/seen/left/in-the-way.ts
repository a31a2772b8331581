import type { CheckCard } from '../../../knowledge/case.ts'
import { coverId } from '../../../knowledge/instantiate/setup-cards.ts'
import type { Hidden } from '../hidden.ts'

/** What stands apart, off or fitted although a check forbids it: what keeps it from being made, and what it spoils. */
export interface InTheWay {
  readonly bars: readonly string[]
  readonly spoils: readonly string[]
}

export function inTheWay(
  hidden: Hidden,
  { asked, engine, forbids, setups }: CheckCard,
  stands: ReadonlySet<string>,
): InTheWay {
  if (asked) return { bars: [], spoils: [] }
  // What may not be there while it is run hot is made after that by the check itself.
  const own = new Set(setups.map(({ id }) => id))
  const left = forbids.map(({ id }) => id).filter((id) => stands.has(id) && !own.has(id))
  const act = engine === 'stopped' ? 'measuring' : engine
  const isBarred = (id: string) => actsBarred(hidden, id).includes(act)
  return { bars: left.filter(isBarred), spoils: left.filter((id) => !isBarred(id)) }
}

function actsBarred({ knowledge, kase: { machine } }: Hidden, setup: string): readonly string[] {
  const cover = Object.keys(machine.access).find((id) => coverId(id) === setup)
  const own = cover === undefined ? knowledge.setups.setups[setup] : machine.access[cover]
  return own?.bars ?? []
}
