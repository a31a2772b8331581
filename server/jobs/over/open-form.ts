import type { Knowledge } from '../../knowledge/knowledge.ts'
import type { Machine } from '../../knowledge/schema/index.ts'
import { overTitle } from '../../knowledge/sheet/over-case.ts'
import { assembliesOf, readingsIn, type Scope } from '../../knowledge/sheet/scope.ts'
import { textOf, wholeOf } from '../../web/fields.ts'
import { airIn } from '../../web/typed/temperature.ts'
import { usualAir } from '../measuring/warmth.ts'
import { readZero } from '../posts/zero.ts'
import type { JobEvent } from '../record/events.ts'
import type { Opened } from '../record/fold.ts'
import { toolsAt } from '../words/tools-at.ts'

/** The form that begins a check-over, as text. */
export interface OverForm {
  /** `machine`, `plug:<name>` or `loose:<name>`. */
  readonly scope: string
  readonly serial: string
  readonly by: string
  readonly air: string
  readonly meter: string
  readonly zero: string
  readonly before: string
}

export const overFields = ['scope', 'serial', 'by', 'air', 'meter', 'zero', 'before'] as const

export function overFormFrom(body: unknown): OverForm {
  const field = (name: (typeof overFields)[number]) => textOf(body, name).trim()
  const entries = overFields.map((name) => [name, field(name)])
  return Object.fromEntries(entries) as unknown as OverForm
}

export type OverProblems = Readonly<Partial<Record<keyof OverForm, string>>>

export type AcceptedOver =
  | { readonly ok: true; readonly opened: Opened; readonly more: readonly JobEvent[] }
  | { readonly ok: false; readonly problems: OverProblems }

/** Longer than any serial number or name. */
const longest = 80

/** Turns the form into the first events of a check-over, or says what is wrong, a sentence a field. */
export function acceptOver(knowledge: Knowledge, machine: Machine, form: OverForm): AcceptedOver {
  const scope = scopeIn(machine, form.scope)
  const tools = benchTools(knowledge)
  const air = airIn(form.air === '' ? String(usualAir) : form.air, 'C')
  const zero = readZero(form.zero)
  const before = form.before === '' ? undefined : wholeOf(form.before.replace(/^no\.?\s*/i, ''))
  const isEmpty = scope !== undefined && readingsIn(knowledge, machine, scope, tools).length === 0
  const problems: OverProblems = {
    ...(scope === undefined && { scope: 'Choose what to check over.' }),
    ...(isEmpty && { scope: 'Nothing is read there with the engine stopped: choose another.' }),
    ...(form.serial.length > longest && { serial: `Keep it to ${longest} characters.` }),
    ...(form.by.length > longest && { by: `Keep it to ${longest} characters.` }),
    ...(typeof air === 'string' && { air }),
    ...(!knowledge.meters.has(form.meter) && { meter: 'Choose a meter from the list.' }),
    ...(typeof zero === 'string' && { zero }),
    ...(before === null && {
      before: 'Write the number of the earlier check-over, or leave it empty.',
    }),
  }
  if (Object.keys(problems).length > 0 || scope === undefined || typeof air === 'string') {
    return { ok: false, problems }
  }
  const conditions = {
    where: 'bench',
    engine: 'cold',
    air: air.celsius,
    airUnit: air.unit,
    meter: form.meter,
    tools,
  } as const
  const over = { scope, serial: form.serial, by: form.by, ...(before != null && { before }) }
  const opened: Opened = {
    kind: 'opened',
    machine: machine.id,
    complaint: overTitle,
    conditions,
    note: [form.serial, form.by].filter(Boolean).join(', '),
    over,
  }
  const meter = { kind: 'class', id: form.meter } as const
  return {
    ok: true,
    opened,
    more: typeof zero === 'number' ? [{ kind: 'meter', meter, zero }] : [],
  }
}

function scopeIn({ connectors, parts, ...machine }: Machine, text: string): Scope | undefined {
  const [kind = '', name = ''] = text.split(':')
  if (kind === 'machine' && name === '') return { kind }
  if (kind === 'plug' && Object.hasOwn(connectors, name)) return { kind, plug: name }
  const assemblies = assembliesOf({ connectors, parts, ...machine })
  const isKnown = assemblies.some(({ id }) => id === name)
  return kind === 'loose' && isKnown ? { kind, assembly: name } : undefined
}

/** What lies on a bench as a rule. */
export const benchTools = (knowledge: Knowledge) => toolsAt(knowledge, 'bench')
