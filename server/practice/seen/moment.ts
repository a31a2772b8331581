import { named } from '../../diagnosis/model/named.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { unplugId } from '../../knowledge/instantiate/setup-cards.ts'
import type { TrueMachine } from '../world/machine.ts'
import type { Moment } from '../world/net/moment.ts'
import { partNamed } from '../world/sheet.ts'
import { isHot, runHot } from './warmth.ts'

/** What a check reads of its part, as the kind of that part has it. */
export function propertyOf({ knowledge, machine }: TrueMachine, { part, measurand }: CheckCard) {
  if (part === undefined || measurand === undefined) return undefined
  const { kind } = partNamed(machine, part)
  return named(knowledge.partKinds, kind).properties[measurand.property]
}

/**
 * The machine as it stands while a check is made.
 *
 * @param stands set-ups that hold
 * @param air °C of all that nobody has warmed
 */
export function momentOf(
  truth: TrueMachine,
  card: CheckCard,
  stands: ReadonlySet<string>,
  air: number,
): Moment {
  const { part = '', measurand } = card
  const { worked = [], key = 'run', loaded = false } = propertyOf(truth, card) ?? {}
  const { connectors, parts } = truth.machine
  const switches = parts.filter(({ id, role }) =>
    worked === 'itself' ? id === part : worked.includes(role),
  )
  const around = isHot(card) ? runHot : air
  return {
    ...{ truth, key, loaded },
    apart: new Set(Object.keys(connectors).filter((plug) => stands.has(unplugId(plug)))),
    worked: new Set(switches.map(({ id }) => id)),
    celsius: (each) => (each === part ? (measurand?.warmedTo ?? around) : around),
  }
}
