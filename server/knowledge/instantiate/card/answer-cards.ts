import type { CheckCard } from '../../case.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Answer } from '../../schema/check-kind.ts'
import type { Machine } from '../../schema/machine.ts'
import { cautionCards } from '../caution-cards.ts'
import type { PlannedCheck } from '../planned-check.ts'
import { offeredOn } from '../where/offered.ts'
import { outputsServed, partsOf } from '../where/outputs.ts'
import { type Fillings, fill, fillingsOf } from '../words.ts'

/**
 * The answers of a check, with their words filled in for this machine; nothing where it is measured.
 *
 * @param say fills in a text of this check
 */
export function answersOn(
  check: PlannedCheck,
  knowledge: Knowledge,
  machine: Machine,
  say: (text: string) => string,
): CheckCard['answers'] {
  const all = outputAnswers(check, machine) ?? offeredOn(check.kind, machine)
  return all?.map(({ id, says, phone, bars, mend, renews, untouched, inVain }) => ({
    id,
    says: say(says),
    phone: say(phone ?? says),
    ...(mend && {
      mend: {
        says: say(mend.do),
        phone: say(mend.phone ?? mend.do),
        ...(mend.kit && { kit: mend.kit }),
        ...(mend.undoes && { undoes: mend.undoes }),
        ...(mend.opens && { opens: mend.opens }),
        ...(mend.stays && { stays: mend.stays }),
        parts: mend.elsewhere ? [] : mendedBy(check, mend.roles, machine),
        ...(mend.elsewhere && { elsewhere: mend.elsewhere }),
        ...(mend.cautions && { cautions: cautionCards(mend.cautions, knowledge, machine) }),
      },
    }),
    ...(bars && { bars }),
    ...(untouched && { untouched }),
    ...(renews && { renews: cautionCards(renews, knowledge, machine) }),
    ...(inVain && { inVain }),
  }))
}

/** An answer for each output, where it is asked which. */
function outputAnswers({ kind, choices }: PlannedCheck, machine: Machine): Answer[] | undefined {
  const { about } = kind
  if (about.kind !== 'which') return undefined
  return choices?.map(({ output }) => ({
    id: output,
    says: fill(about.answer, { ...fillingsOf(machine, output), ...outputIn({ output }, machine) }),
  }))
}

/** The parts whose fault it was if that cures it: the one looked at, or those of the roles named. */
function mendedBy(
  { part, output }: PlannedCheck,
  roles: readonly string[] | undefined,
  machine: Machine,
): string[] {
  if (roles === undefined) return part === undefined ? [] : [part.id]
  return roles.flatMap((role) => partsOf(machine, role, output).map(({ id }) => id))
}

/** "left cylinder"; "cylinder 1 and cylinder 4" where the part serves both. */
export function outputIn(
  { output, part }: Pick<PlannedCheck, 'output' | 'part'>,
  machine: Machine,
): Fillings {
  const meant = output === undefined ? outputsServed(part ?? {}) : [output]
  const names = machine.outputs.filter(({ id }) => meant.includes(id)).map(({ name }) => name)
  return names.length === 0 ? {} : { output: names.join(' and ') }
}
