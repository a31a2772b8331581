import { entry } from '../../diagnosis/model/named.ts'
import type { CautionCard } from '../case.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Machine } from '../schema/machine.ts'
import { fill, fillingsOf } from './words.ts'

/** Cautions by name, in the order named, without those about what the machine does not have. */
export function cautionCards(
  names: readonly string[],
  knowledge: Knowledge,
  machine?: Machine,
): CautionCard[] {
  return names.flatMap((id) => {
    const { roles, ...caution } = entry(knowledge.cautions.cautions, id)
    const isMeant = !roles || !machine || machine.parts.some(({ role }) => roles.includes(role))
    if (!isMeant) return []
    const card = cautionCard(id, caution)
    return machine ? [{ ...card, phone: fill(card.phone, fillingsOf(machine)) }] : [card]
  })
}

type Caution = Knowledge['cautions']['cautions'][string]

function cautionCard(id: string, caution: Omit<Caution, 'roles'>): CautionCard {
  const { signal, command, says, phone, reminds, neededWhen = {} } = caution
  const engine = neededWhen.engine?.find((each) => each !== 'stopped')
  return {
    ...{ id, signal, command, says, phone, reminds },
    ...(engine && { engine }),
    ...(neededWhen.setups && { setups: neededWhen.setups }),
  }
}
