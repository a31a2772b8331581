import type { Knowledge } from '../../knowledge/knowledge.ts'
import { usualMeter } from '../../knowledge/meters.ts'
import { Place } from '../../knowledge/schema/shared.ts'
import { textOf, textsOf } from '../../web/fields.ts'
import { type DegreeUnit, printTemperature } from '../../web/typed/temperature.ts'
import { usualAir } from '../measuring/warmth.ts'
import type { Folded } from '../record/fold.ts'
import { type BeginsWith, beginsIn } from './begins-with.ts'
import {
  fieldOfKit,
  fieldOfSet,
  setAt,
  type TickedTools,
  usualKit,
  usualTools,
} from './tool-sets.ts'

/**
 * What was typed and chosen in the form that opens a job, as text, whether it can be taken or not.
 * Posted to `/jobs` under these names; `job` is `machine/complaint`, and each set of tools has a field
 * of its own, which may come several times.
 */
export interface NewJobForm {
  readonly job: string
  readonly where: string
  readonly engine: string
  readonly air: string
  /** The unit of an air temperature that names none. */
  readonly airUnit: DegreeUnit
  readonly meter: string
  /** The set of tools at hand; of its ticks the others know nothing. */
  readonly set: string
  readonly tools: TickedTools
  /** Who is at the machine. */
  readonly who: string
  /** The set of what an owner has with them, and the ticks of each. */
  readonly kitSet: string
  readonly kit: TickedTools
  /** Of a machine that drives a boat: `yes` where it is on the water, `no` on land, empty where nobody has said. */
  readonly afloat: string
  readonly note: string
  /** A reading that was made before there was a job. */
  readonly begins?: BeginsWith
}

/** What the form was sent with. */
export function sentForm(knowledge: Knowledge, body: unknown): NewJobForm {
  const ticks = (sets: object, fieldOf: (set: string) => string): TickedTools =>
    Object.fromEntries(Object.keys(sets).map((set) => [set, textsOf(body, fieldOf(set))]))
  const begins = beginsIn(body)
  return {
    job: textOf(body, 'job'),
    where: textOf(body, 'where'),
    engine: textOf(body, 'engine'),
    air: textOf(body, 'air'),
    airUnit: textOf(body, 'airUnit') === 'F' ? 'F' : 'C',
    meter: textOf(body, 'meter'),
    set: textOf(body, 'set'),
    tools: ticks(knowledge.tools.sets, fieldOfSet),
    who: textOf(body, 'who') || 'self',
    kitSet: textOf(body, 'kit-set'),
    kit: ticks(knowledge.owner.sets, fieldOfKit),
    afloat: textOf(body, 'afloat'),
    note: textOf(body, 'note'),
    ...(begins && { begins }),
  }
}

/** The form as it first comes, in the shop's unit: most people can send it as it is. */
export function defaultForm(knowledge: Knowledge, query: unknown, unit: DegreeUnit): NewJobForm {
  const where = Place.catch('bench').parse(textOf(query, 'where'))
  const begins = beginsIn(query)
  return {
    job: `${textOf(query, 'machine')}/${textOf(query, 'complaint')}`,
    where,
    engine: 'cold',
    air: textOf(query, 'air') || printTemperature(usualAir, unit),
    airUnit: unit,
    meter: textOf(query, 'meter') || usualMeter(knowledge),
    set: setAt(knowledge, where),
    tools: usualTools(knowledge),
    who: textOf(query, 'who') || 'self',
    ...usualKit(knowledge),
    afloat: '',
    note: '',
    ...(begins && { begins }),
  }
}

/** The form with how things stand on a job, to change what is otherwise by now. */
export function formOf(knowledge: Knowledge, { opened, conditions, note }: Folded): NewJobForm {
  const { where, engine, air, airUnit = 'C', meter, tools, who = 'self', kit, afloat } = conditions
  const usual = usualTools(knowledge)
  const set = Object.keys(usual).find((name) => isSame(usual[name] ?? [], tools))
  const shown = set ?? setAt(knowledge, where)
  return {
    job: `${opened.machine}/${opened.complaint}`,
    where,
    engine,
    air: printTemperature(air, airUnit),
    airUnit,
    meter,
    set: shown,
    tools: { ...usual, [shown]: tools },
    who,
    ...kitAsTicked(knowledge, kit),
    // At a bench nobody is asked, and at the trail nobody was in older jobs.
    afloat: afloat ? 'yes' : who === 'owner' ? 'no' : '',
    note,
  }
}

/**
 * The form to take a job over that an owner was at: whoever fills it in is at the machine, at the bench, with the
 * tools that one has there.
 */
export function takenOver(knowledge: Knowledge, folded: Folded): NewJobForm {
  const form = formOf(knowledge, folded)
  const where: Place = 'bench'
  return {
    ...form,
    who: 'self',
    where,
    // It is as cold at the owner's as it may be.
    air: printTemperature(usualAir, form.airUnit),
    set: setAt(knowledge, where),
    tools: usualTools(knowledge),
  }
}

/** The set with just that kit, or the one that holds most, with these ticks. */
function kitAsTicked(knowledge: Knowledge, kit: readonly string[] | undefined) {
  const usual = usualKit(knowledge)
  if (kit === undefined) return usual
  const set = Object.keys(usual.kit).find((name) => isSame(usual.kit[name] ?? [], kit))
  const shown = set ?? usual.kitSet
  return { kitSet: shown, kit: { ...usual.kit, [shown]: kit } }
}

const isSame = (some: readonly string[], others: readonly string[]) =>
  some.length === others.length && some.every((each) => others.includes(each))

/**
 * The form as it was filled in, once the place was changed: the tools are those that one has there as a
 * rule, but for somebody who has none.
 */
export function movedForm(knowledge: Knowledge, query: unknown): NewJobForm {
  const form = sentForm(knowledge, query)
  const where = Place.safeParse(form.where).data
  const hasPlace = knowledge.tools.sets[form.set]?.place !== undefined
  return where !== undefined && hasPlace ? { ...form, set: setAt(knowledge, where) } : form
}
