import { entry, named } from '../../diagnosis/model/named.ts'
import { heldAt } from '../../measure/correct/follows-warmth.ts'
import { parseQuantityText } from '../../measure/reading/parse.ts'
import { printLimits } from '../../measure/reading/print.ts'
import type { Limits } from '../../measure/reading/reading.ts'
import type { CheckCard, OwnerFit, ToolCard } from '../case.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Answer } from '../schema/check-kind.ts'
import type { Machine, SheetLimits } from '../schema/machine.ts'
import { cautionCards } from './caution-cards.ts'
import { forbidsFor } from './forbids.ts'
import type { LimitsOf, PlannedCheck } from './planned-check.ts'
import { phoneWords } from './setup-cards.ts'
import { coversFor, lastSteps, setupsFor } from './setups.ts'
import { waitAfterTurning } from './waits.ts'
import { countedAs, offeredOn } from './where/offered.ts'
import { outputsServed, partsOf } from './where/outputs.ts'
import { pinsInWords, spotOf, wiresInWords } from './where/spot.ts'
import { type Fillings, fill, fillingsOf, sentencesIn } from './words.ts'

/**
 * Everything a page says about one planned check, with the words filled in for this machine.
 *
 * @param loose the part lies on the bench by itself: nothing has to be taken off or apart for it
 */
export function checkCard(
  check: PlannedCheck,
  knowledge: Knowledge,
  machine: Machine,
  loose = false,
): CheckCard {
  const { kind } = check
  const spot = check.reach && spotOf(machine, check.reach)
  const measurand = measuredBy(check, knowledge)
  const setups = loose ? [] : setupsFor(check, knowledge, machine)
  const last = lastSteps(setups, machine)
  const fillings = {
    ...fillingsFor(check, machine, spot, measurand),
    ground: loose ? 'the core' : 'the engine',
  }
  const say = (text: string) => fill(text, fillings)
  const steps = [...kind.do.map(say).filter(Boolean), ...last]
  const waits = waitAfterTurning(knowledge, kind.engine, steps)
  const spoken = sentencesIn(say(kind.phone))
  const which = outputAnswers(check, machine)
  const answers = (which ?? offeredOn(kind, machine))?.map(
    ({ id, says, phone, bars, mend, renews, untouched }) => ({
      id,
      says: say(says),
      phone: say(phone ?? says),
      ...(mend && {
        mend: {
          says: say(mend.do),
          phone: say(mend.phone ?? mend.do),
          ...(mend.undoes && { undoes: mend.undoes }),
          parts: mendedBy(check, mend.roles, machine),
        },
      }),
      ...(bars && { bars }),
      ...(untouched && { untouched }),
      ...(renews && { renews: cautionCards(renews, knowledge, machine) }),
    }),
  )
  const counted = countedAs(kind, machine)
  const isSomeGone = Object.keys(counted).length > 0
  return {
    id: check.id,
    title: say(kind.title),
    engine: kind.engine,
    where: kind.where,
    tools: toolsFor(check, knowledge, machine, loose),
    minutes: kind.minutes + waits,
    ...(waits > 0 && { waits }),
    setups,
    forbids: loose ? [] : forbidsFor(check, setups, knowledge, machine),
    do: steps,
    phone: [...spoken, ...lastSteps(setups, machine, phoneWords).flatMap(sentencesIn)],
    asks: spoken.findLast((each) => each.endsWith('?')) ?? spoken.at(-1) ?? '',
    why: say(kind.why),
    owner: ownerFit(kind.owner),
    cautions: cautionCards(kind.cautions, knowledge, machine),
    outcomes: outcomesOf(check, knowledge, machine),
    ...(isSomeGone && { countedAs: counted }),
    ...(check.part && { part: check.part.id }),
    ...(kind.oneWay && { oneWay: kind.oneWay }),
    ...(kind.teach && { teach: say(kind.teach) }),
    ...(kind.asked && { asked: true }),
    ...(kind.cools && { cools: true }),
    ...(loose && { loose: true }),
    ...(kind.meter && { meter: say(kind.meter) }),
    ...(spot && { spot }),
    ...(measurand && { measurand }),
    ...(answers && !measurand && { answers }),
  }
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

/** Whether an owner can make it, as its file says. */
function ownerFit(owner: PlannedCheck['kind']['owner']): OwnerFit {
  if (owner === 'yes') return { fit: true, needs: [] }
  return typeof owner === 'string' ? { fit: false, why: owner } : { fit: true, needs: owner.needs }
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

/**
 * The bands of what is measured, or the answers, by name.
 *
 * @throws RangeError if the kind has neither; the lint has seen to that before.
 */
export function outcomesOf(
  check: PlannedCheck,
  knowledge: Knowledge,
  machine: Machine,
): readonly string[] {
  const answers = offeredOn(check.kind, machine)
  if (check.choices !== undefined) return check.choices.map(({ output }) => output)
  if (check.limitsOf !== undefined) {
    const { quantity } = propertyOf(check.limitsOf, knowledge)
    return entry(knowledge.quantities, quantity).bands
  }
  if (answers === undefined) throw new RangeError(`check ${check.id} has no limits and no answers`)
  return answers.map(({ id }) => id)
}

function propertyOf({ part, property }: LimitsOf, { partKinds }: Knowledge) {
  return entry(named(partKinds, part.kind).properties, property)
}

/**
 * Limits of a sheet as numbers.
 *
 * @throws RangeError if a text is no value with a unit; the lint has seen to that before.
 */
export function limitsOf(sheet: SheetLimits): Limits {
  const value = (text: string): number => {
    const parsed = parseQuantityText(text)
    if (parsed === null) throw new RangeError(`not a value with a unit: ${text}`)
    return parsed.value
  }
  return {
    ...(sheet.low !== undefined && { low: value(sheet.low) }),
    ...(sheet.high !== undefined && { high: value(sheet.high) }),
  }
}

/** What is measured by a planned check, or nothing where it is looked at, listened to or asked. */
export function measuredBy(check: PlannedCheck, knowledge: Knowledge): CheckCard['measurand'] {
  if (check.limitsOf === undefined) return undefined
  const { property, sheet } = check.limitsOf
  const { quantity, material } = propertyOf(check.limitsOf, knowledge)
  return {
    property,
    quantity: entry(knowledge.quantities, quantity),
    limits: limitsOf(sheet),
    limitsSource: sheet.source,
    material: sheet.copper === undefined ? (material ?? 'not copper') : { copper: sheet.copper },
    ...(sheet.at !== undefined && { at: sheet.at }),
    ...(sheet.rpm !== undefined && { rpm: sheet.rpm }),
    ...(check.kind.places !== undefined && { places: check.kind.places }),
    ...(check.kind.warmedTo !== undefined && { warmedTo: check.kind.warmedTo }),
  }
}

function fillingsFor(
  check: PlannedCheck,
  machine: Machine,
  spot: CheckCard['spot'],
  measurand: CheckCard['measurand'],
): Fillings {
  const connector = spot?.connector?.card
  return {
    ...fillingsOf(machine, check.output),
    ...(check.part && { part: check.part.name, role: check.part.role.replaceAll('-', ' ') }),
    ...(check.swap && { part: check.swap[0].name, other: check.swap[1].name }),
    ...outputIn(check, machine),
    ...(spot && {
      place: spot.says,
      pins: connector ? pinsInWords(spot.touch) : spot.touch.join(' and '),
      wires: wiresInWords(connector, spot.touch),
    }),
    ...(connector && { connector: connector.name }),
    ...(measurand && {
      limits: `${printLimits(measurand.limits, measurand.quantity.unit)}${heldAt(measurand)}`,
    }),
  }
}

/** "left cylinder"; "cylinder 1 and cylinder 4" where the part serves both. */
function outputIn(
  { output, part }: Pick<PlannedCheck, 'output' | 'part'>,
  machine: Machine,
): Fillings {
  const meant = output === undefined ? outputsServed(part ?? {}) : [output]
  const names = machine.outputs.filter(({ id }) => meant.includes(id)).map(({ name }) => name)
  return names.length === 0 ? {} : { output: names.join(' and ') }
}

function toolsFor(
  check: PlannedCheck,
  knowledge: Knowledge,
  machine: Machine,
  loose: boolean,
): ToolCard[] {
  const { kind } = check
  // No cover is over what lies on the bench.
  const covers = loose ? [] : coversFor(check, machine)
  const forCovers = covers.flatMap((id) => entry(machine.access, id).tools ?? [])
  const forSetups = (kind.setups ?? []).flatMap(
    (id) => entry(knowledge.setups.setups, id).tools ?? [],
  )
  return [...new Set([...kind.tools, ...forSetups, ...forCovers])].map((id) => {
    const { name, above } = entry(knowledge.tools.tools, id)
    return { id, name, ...(above !== undefined && { above }) }
  })
}
