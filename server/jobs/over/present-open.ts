import type { Knowledge } from '../../knowledge/knowledge.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import type { Machine } from '../../knowledge/schema/index.ts'
import { assembliesOf, readingsIn } from '../../knowledge/sheet/scope.ts'
import { counted, upperFirst } from '../words/sentences.ts'
import { benchTools, type OverForm, type OverProblems } from './open-form.ts'

/** View model of the form that begins a check-over. */
export interface OverFormPage {
  readonly title: string
  readonly machine: string
  readonly action: string
  readonly back: { readonly href: string; readonly text: string }
  readonly scopes: readonly {
    readonly label: string
    readonly choices: readonly {
      readonly value: string
      readonly says: string
      readonly chosen: boolean
    }[]
  }[]
  readonly meters: readonly {
    readonly value: string
    readonly says: string
    readonly chosen: boolean
  }[]
  readonly form: OverForm
  readonly problems: readonly { readonly field: string; readonly sentence: string }[]
  readonly problemOf: OverProblems
}

export function presentOverForm(
  knowledge: Knowledge,
  machine: Machine,
  form: OverForm,
  problems: OverProblems = {},
): OverFormPage {
  const tools = benchTools(knowledge)
  const count = (scope: Parameters<typeof readingsIn>[2]) =>
    readingsIn(knowledge, machine, scope, tools).length
  const choice = (value: string, says: string, readings: number) => ({
    value,
    says: `${says}, ${counted(readings, 'reading')}`,
    chosen: form.scope === value,
  })
  const plugs = Object.entries(machine.connectors).flatMap(([plug, { name }]) => {
    const readings = count({ kind: 'plug', plug })
    return readings === 0 ? [] : [choice(`plug:${plug}`, upperFirst(name), readings)]
  })
  return {
    title: `Check over: ${machineName(machine)}`,
    machine: machineName(machine),
    action: `/machines/${encodeURIComponent(machine.id)}/check-over`,
    back: {
      href: `/machines/${encodeURIComponent(machine.id)}`,
      text: 'All limits of this machine',
    },
    scopes: [
      {
        label: 'Loose on the bench',
        choices: assembliesOf(machine).map(({ id, name }) =>
          choice(`loose:${id}`, upperFirst(name), count({ kind: 'loose', assembly: id })),
        ),
      },
      {
        label: 'On the machine',
        choices: [choice('machine', 'Whole machine', count({ kind: 'machine' })), ...plugs],
      },
    ].filter(({ choices }) => choices.length > 0),
    meters: [...knowledge.meters.values()].map(({ id, name }) => ({
      value: id,
      says: name,
      chosen: id === form.meter,
    })),
    form,
    problems: Object.entries(problems).map(([field, sentence]) => ({ field, sentence })),
    problemOf: problems,
  }
}
