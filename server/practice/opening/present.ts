import { dateAndTime } from '../../jobs/words/sentences.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import { progressHref, roundHref } from '../page/hrefs.ts'
import type { Level } from '../record/events.ts'
import type { RoundLine } from '../record/rounds.ts'
import type { RoundForm } from './form.ts'

/** The page that opens a round. */
export interface OpeningPage {
  readonly title: string
  readonly form: RoundForm
  readonly problem?: string
  readonly machines: readonly Choice[]
  readonly complaints: readonly Choice[]
  readonly levels: readonly Choice[]
  /** Rounds of this person that go on. */
  readonly open: readonly { readonly href: string; readonly says: string }[]
  readonly progress: { readonly href: string; readonly text: string }
}

interface Choice {
  readonly value: string
  readonly says: string
  readonly chosen: boolean
}

const levelWords: Readonly<Record<Level, string>> = {
  any: 'As faults come in a shop',
  easy: 'An easy one',
  hard: 'A hard one',
}

export function presentOpening(
  knowledge: Knowledge,
  form: RoundForm,
  rounds: readonly RoundLine[],
  problem?: string,
): OpeningPage {
  const choices = (all: readonly (readonly [string, string])[], chosen: string) =>
    all.map(([value, says]) => ({ value, says, chosen: value === chosen }))
  const machines = [...knowledge.machines.values()].map(
    (machine) => [machine.id, machineName(machine)] as const,
  )
  const complaints = [...knowledge.complaints.values()].map(({ id, title }) => [id, title] as const)
  return {
    title: 'Practice bench',
    form,
    ...(problem !== undefined && { problem }),
    machines: choices([['', 'Any machine'], ...machines], form.machine),
    complaints: choices([['', 'Any complaint'], ...complaints], form.complaint),
    levels: choices(Object.entries(levelWords), form.level),
    open: rounds
      .filter(({ result }) => result === null)
      .slice(0, mostOpen)
      .map(({ id, openedAt }) => ({
        href: roundHref(id),
        says: `Round ${id}, begun ${dateAndTime(openedAt)}`,
      })),
    progress: { href: progressHref(form.who), text: 'How it goes so far' },
  }
}

const mostOpen = 5
