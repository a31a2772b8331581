import { entry } from '../../../diagnosis/model/named.ts'
import { heldAt } from '../../../measure/correct/follows-warmth.ts'
import { printLimits } from '../../../measure/reading/print.ts'
import type { CheckCard, OwnerFit, ToolCard } from '../../case.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Machine } from '../../schema/machine.ts'
import { cautionCards } from '../caution-cards.ts'
import { forbidsFor } from '../forbids.ts'
import type { PlannedCheck } from '../planned-check.ts'
import { phoneWords } from '../setup-cards.ts'
import { coversFor, lastSteps, setupsFor } from '../setups.ts'
import { waitAfterTurning } from '../waits.ts'
import { countedAs } from '../where/offered.ts'
import { pinsInWords, spotOf, wiresInWords } from '../where/spot.ts'
import { type Fillings, fill, fillingsOf, sentencesIn } from '../words.ts'
import { answersOn, outputIn } from './answer-cards.ts'
import { measuredBy, outcomesOf } from './measured.ts'

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
  const answers = answersOn(check, knowledge, machine, say)
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

/** Whether an owner can make it, as its file says. */
function ownerFit(owner: PlannedCheck['kind']['owner']): OwnerFit {
  if (owner === 'yes') return { fit: true, needs: [] }
  return typeof owner === 'string' ? { fit: false, why: owner } : { fit: true, needs: owner.needs }
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
