import type { Knowledge } from '../../knowledge/knowledge.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import { printTemperature } from '../../web/typed/temperature.ts'
import { type Conditions, gotGoing } from '../record/events.ts'
import { repairsInVain } from '../record/fold.ts'
import type { Fact } from '../words/fact.ts'
import { engineWords, meterWords, placeWords, repairedNames, whoWords } from '../words/names.ts'
import { counted, dateAndTime, listed, lowerFirst, upperFirst } from '../words/sentences.ts'
import type { Standing } from './standing.ts'

/** The head of the work order: what was said, and how things stand. */
export function presentHead({ job, folded, meter, kase, knowledge }: Standing): Fact[] {
  const { conditions, note } = folded
  const stillThere = repairsInVain(folded)
  return [
    { label: 'Machine', value: machineName(kase.machine) },
    { label: 'Complaint', value: kase.complaint.title },
    { label: 'Owner says', value: kase.complaint.owner },
    { label: 'Opened', value: dateAndTime(folded.openedAt) },
    {
      label: 'Work done',
      value: placeWords[conditions.where],
      way: { href: `/jobs/${job.id}/conditions`, text: 'Change' },
    },
    ...atTheMachine(kase, folded, knowledge),
    { label: 'Air', value: printTemperature(conditions.air, conditions.airUnit ?? 'C') },
    { label: 'Engine', value: engineWords[conditions.engine] },
    {
      label: 'Meter',
      value: hasMeter(kase, conditions) ? meterWords(meter) : 'None',
      way: { href: `/jobs/${job.id}/meter`, text: 'Meter and leads' },
    },
    { label: 'Tools at hand', value: toolWords(conditions, knowledge) },
    ...(job.counted === undefined
      ? []
      : [
          {
            label: 'Base rates',
            value: `Moved by ${counted(job.counted.repairs.length, 'confirmed repair')}`,
            way: { href: `/rates/${kase.machine.id}`, text: 'Look' },
          },
        ]),
    ...(stillThere.length === 0
      ? []
      : [{ label: 'Repaired, still there', value: upperFirst(repairedNames(kase, stillThere)) }]),
    ...(note === '' ? [] : [{ label: 'Note', value: note }]),
  ]
}

/** An owner on the phone may have none, and then measures nothing. */
const hasMeter = ({ checks }: Standing['kase'], { who, tools }: Conditions): boolean =>
  who !== 'owner' ||
  [...checks.values()].some(
    (card) => card.measurand && card.tools.every(({ id }) => tools.includes(id)),
  )

/** Who is at the machine where it is not whoever reads this, and what came by phone before, with what it led to. */
function atTheMachine(
  kase: Standing['kase'],
  folded: Standing['folded'],
  { home }: Knowledge,
): Fact[] {
  const { conditions, readings, tried } = folded
  const { who = 'self' } = conditions
  const told = [...readings.values()].filter(({ conditions }) => conditions.who === 'owner').length
  const [helped] = [...tried].findLast(([, came]) => gotGoing(came)) ?? []
  const way = helped === undefined ? undefined : home.ways[helped]
  return [
    ...(who === 'self' ? [] : [{ label: 'At the machine', value: whoWords[who] }]),
    ...(told > 0 && who !== 'owner'
      ? [{ label: 'By phone', value: `${counted(told, 'reading')}, as the owner told them` }]
      : []),
    ...putRightByPhone(kase, folded),
    ...waysInVain(folded, home),
    ...(way ? [{ label: 'Got home', value: way.says }] : []),
  ]
}

/** Ways home that did not help, or not for long. */
function waysInVain({ tried }: Standing['folded'], { ways }: Knowledge['home']): Fact[] {
  const vain = [...tried].flatMap(([id, came]) => {
    const says = ways[id]?.says
    if (says === undefined || came === 'helped' || came === 'as before') return []
    return [`${says}, and it ${vainly[came]}`]
  })
  return vain.map((says) => ({ label: 'Tried by phone', value: says }))
}

const vainly = {
  stopped: 'ran and stopped again',
  'no help': 'did not run',
  'broken off': 'was left half done',
}

/** What an owner was told to put right, and tried in vain or could not try, by its part. */
function putRightByPhone(
  { checks, parts }: Standing['kase'],
  { putRight }: Standing['folded'],
): Fact[] {
  return [...putRight].flatMap(([of, came]): Fact[] => {
    const name = parts.get(checks.get(of)?.part ?? of)?.name ?? checks.get(of)?.title
    if (name === undefined || came === 'not done' || came === 'taken back') return []
    return [
      came === 'done'
        ? { label: 'Put right by phone', value: `${upperFirst(name)}, and not tried` }
        : { label: 'Tried by phone', value: `${upperFirst(name)}, and it was still the same` },
    ]
  })
}

/** A full tool box would take more room than the rest of the head: then they are only counted. */
function toolWords(
  { who, kit, tools: atHand }: Conditions,
  { tools: { tools }, owner }: Knowledge,
): string {
  // Of an owner as they were asked for it: a hand serves where whoever is at the bench takes a tool.
  if (who === 'owner' && kit !== undefined) {
    return (
      upperFirst(listed(kit.map((each) => lowerFirst(owner.kit[each]?.asks ?? each)))) || 'None'
    )
  }
  const known = Object.keys(tools).length
  if (atHand.length === known) return `All ${known} on the list`
  if (atHand.length > namedTools) return `${atHand.length} of the ${known} on the list`
  return upperFirst(listed(atHand.map((tool) => lowerFirst(tools[tool]?.name ?? tool)))) || 'None'
}

const namedTools = 3
