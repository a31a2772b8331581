import { named } from '../diagnosis/model/named.ts'
import type { Testability } from '../diagnosis/testability/testability.ts'
import type { Case } from '../knowledge/case.ts'
import type { CaseTestability } from '../knowledge/case-testability.ts'
import type { Fit } from '../knowledge/fits.ts'
import { caseFor } from '../knowledge/instantiate.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { machineName } from '../knowledge/machine-name.ts'
import { counted, listed, upperFirst } from '../web/words.ts'
import type { Standing } from './figures.ts'
import type { CaseHealthPage, Group, NeverPay, ToolBox } from './page.ts'
import { foundWith } from './present-figures.ts'
import { failed, groupsOf, meaning } from './words.ts'

/** The page of one complaint on one machine. */
export function presentCaseHealth(
  knowledge: Knowledge,
  { machine, complaint }: Fit,
  standing: Standing,
): CaseHealthPage {
  const href = `/health/${machine.id}/${complaint.id}`
  const page = {
    title: complaint.title,
    machine: machineName(machine),
    meaning,
    working: standing.kind === 'waiting' ? { says: 'This is still being worked out.', href } : null,
    failed: standing.kind === 'failed' ? failed : '',
  }
  if (standing.kind !== 'found')
    return { ...page, boxes: [], neverPay: null, leftOut: '', said: page.failed }
  const kase = caseFor(knowledge, machine.id, complaint.id)
  return {
    ...page,
    boxes: presentBoxes(kase, standing.found),
    neverPay: presentNeverPay(kase, standing.found),
    leftOut: leftOutWords(kase),
    said: 'The figures are worked out.',
  }
}

/** What the walk takes for something else because it is too rare; empty where that is next to nothing. */
function leftOutWords({ leftOut }: Case): string {
  if (leftOut < 0.0001) return ''
  const share = (100 * leftOut).toFixed(2)
  return `Faults at several places at once come in more ways than can be weighed: the rarest, ${share} % of all explanations by weight, count as something else.`
}

/** The full tool box first, then what one has as a rule at each place. */
export function presentBoxes(kase: Case, { full, at }: CaseTestability): ToolBox[] {
  return [
    presentBox(kase, 'full', 'With a full tool box', full),
    presentBox(kase, 'bench', 'With what one has at the bench', at.bench),
    presentBox(kase, 'trailside', 'With what one has at the trailside', at.trailside),
  ]
}

function presentBox(kase: Case, id: string, title: string, found: Testability): ToolBox {
  const groups = groupsOf(found).map((group) => presentGroup(kase, group))
  return {
    id,
    title,
    figures: foundWith(found),
    says:
      groups.length + found.missed.length > 0
        ? ''
        : 'Every fault is found, and its part told from every other.',
    missed: found.missed.map((fault) => upperFirst(faultWords(kase, fault))),
    groups,
  }
}

function presentGroup(kase: Case, { parts, faults }: ReturnType<typeof groupsOf>[number]): Group {
  return {
    parts: upperFirst(
      listed(
        parts.map((part) => named(kase.parts, part).name),
        'or',
      ),
    ),
    faults: `Ends here: ${faults.map((fault) => faultWords(kase, fault)).join('; ')}.`,
  }
}

/** "start exciter is open somewhere in the winding" */
function faultWords(kase: Case, fault: string): string {
  const { part, says } = named(kase.faults, fault)
  return `${named(kase.parts, part).name} ${says}`
}

/** By title, and by place where it has one: the same may be read in two places. */
export function presentNeverPay(kase: Case, { neverPay, checks }: CaseTestability): NeverPay {
  return {
    says:
      neverPay.length === 0
        ? `Each of the ${counted(checks, 'check')} is proposed for some fault or pair of faults.`
        : `${neverPay.length} of ${counted(checks, 'check')} ${neverPay.length === 1 ? 'is' : 'are'} ` +
          'proposed for no fault and no pair of faults, with none of these tool boxes.',
    checks: neverPay.map((id) => {
      const { title, spot } = named(kase.checks, id)
      return { title, place: spot?.says ?? '' }
    }),
  }
}
