import type { Knowledge, Locate, Problem } from '../knowledge.ts'
import { bringsRule } from './brings-rule.ts'
import { chancesRule } from './chances-rule.ts'
import { checksRule } from './checks-rule.ts'
import { doubts } from './doubts/index.ts'
import { cutSetsRule } from './drawn/cut-sets-rule.ts'
import { sightRule } from './drawn/sight-rule.ts'
import { wayRule } from './drawn/way-rule.ts'
import { crankRule } from './figures/crank-rule.ts'
import { insteadRule } from './figures/instead-rule.ts'
import { metersRule } from './figures/meters-rule.ts'
import { usualRule } from './figures/usual-rule.ts'
import { gatesRule } from './gates-rule.ts'
import { namesRule } from './names-rule.ts'
import { nestingRule } from './nesting-rule.ts'
import { placeholdersRule } from './placeholders-rule.ts'
import { newReport, type Rule } from './report.ts'
import { rolesRule } from './roles-rule.ts'
import { cautionsRule } from './safety/cautions-rule.ts'
import { ownerRule } from './safety/owner-rule.ts'
import { stopRule } from './safety/stop-rule.ts'
import { setupsRule } from './setups-rule.ts'
import { sharedPinsRule } from './shared-pins-rule.ts'
import { sheetsRule } from './sheets-rule.ts'

/** Each stage may trust what the stages before it insist on. */
const stages: readonly (readonly Rule[])[] = [
  [namesRule],
  [
    rolesRule,
    placeholdersRule,
    gatesRule,
    bringsRule,
    sheetsRule,
    sharedPinsRule,
    metersRule,
    crankRule,
    insteadRule,
    checksRule,
    cautionsRule,
    setupsRule,
    stopRule,
    ownerRule,
    chancesRule,
    usualRule,
  ],
  [nestingRule],
  [cutSetsRule],
  [sightRule, wayRule],
]

/** Everything that is wrong with the meaning of the knowledge; empty if nothing is. */
export function lint(knowledge: Knowledge, locate: Locate): Problem[] {
  for (const stage of stages) {
    const report = newReport(locate)
    for (const rule of stage) rule(knowledge, report)
    if (report.problems.length > 0) return report.problems
  }
  return []
}

/** What is doubtful in knowledge that is sound: somebody should look, and nothing is refused for it. */
export function warnings(knowledge: Knowledge, locate: Locate): Problem[] {
  const report = newReport(locate)
  for (const rule of doubts) rule(knowledge, report)
  return report.problems
}
