import { type CaseTestability, kindsThatNeverPay } from '../knowledge/case-testability.ts'
import { allFits, type Fit } from '../knowledge/fits.ts'
import { caseFor } from '../knowledge/instantiate.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { machineName } from '../knowledge/machine-name.ts'
import type { Standing } from './figures.ts'
import type { HealthPage, HealthRow } from './page.ts'
import { columns, figuresOf } from './present-figures.ts'
import { presentTotals } from './present-totals.ts'
import { failed, meaning } from './words.ts'

interface Row {
  readonly fit: Fit
  readonly standing: Standing
}

/** The page of all cases, as far as they are worked out. */
export function presentHealth(
  knowledge: Knowledge,
  standingOf: (fit: Fit) => Standing,
): HealthPage {
  const rows = allFits(knowledge).map((fit) => ({ fit, standing: standingOf(fit) }))
  const waiting = rows.filter(({ standing }) => standing.kind === 'waiting').length
  return {
    title: 'Knowledge health',
    totals: presentTotals(
      rows.flatMap(found).map(({ found }) => found),
      rows.length,
    ),
    meaning: `${meaning} The rows are for a full tool box. ${neverPays}`,
    working: waiting === 0 ? null : { says: workingWords(waiting, rows.length), href: '/health' },
    columns,
    machines: [...knowledge.machines.values()].map((machine) => ({
      id: machine.id,
      name: machineName(machine),
      rows: rows.filter(({ fit }) => fit.machine === machine).map(presentRow),
    })),
    kinds: waiting === 0 ? presentKinds(knowledge, rows) : null,
    said: waiting === 0 ? 'All figures are worked out.' : '',
  }
}

const neverPays =
  'A check never pays where no walk proposes it, for no fault and no pair of faults, neither with a ' +
  'full tool box nor with what one has as a rule at the bench or at the trailside.'

function presentRow({ fit: { machine, complaint }, standing }: Row): HealthRow {
  return {
    id: `${machine.id}.${complaint.id}`,
    complaint: complaint.title,
    href: `/health/${machine.id}/${complaint.id}`,
    says: standingWords[standing.kind],
    figures: standing.kind === 'found' ? figuresOf(standing.found) : [],
  }
}

const standingWords = { waiting: 'Being worked out', failed, found: '' } as const

function workingWords(waiting: number, all: number): string {
  if (waiting === all) return `All ${all} are still being worked out.`
  return waiting === 1
    ? `1 of ${all} is still being worked out.`
    : `${waiting} of ${all} are still being worked out.`
}

function found({ fit, standing }: Row): readonly { fit: Fit; found: CaseTestability }[] {
  return standing.kind === 'found' ? [{ fit, found: standing.found }] : []
}

/** Nothing can be said while a case is missing: a kind may pay just there. */
function presentKinds(knowledge: Knowledge, rows: readonly Row[]): HealthPage['kinds'] {
  const cases = rows.flatMap(found)
  if (cases.length < rows.length) return null
  const files = kindsThatNeverPay(
    knowledge,
    cases.map(({ fit: { machine, complaint }, found: { neverPay } }) => ({
      checks: caseFor(knowledge, machine.id, complaint.id).checks,
      neverPay,
    })),
  )
  const all = knowledge.checkKinds.size
  const says =
    files.length === 0
      ? `Each of the ${all} kinds of check pays somewhere.`
      : `${files.length} of ${all} kinds of check never pay on any machine for any complaint.`
  return { says, files }
}
