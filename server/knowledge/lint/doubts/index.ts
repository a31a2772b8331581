import type { Rule } from '../report.ts'
import { alikeRule } from './agree/alike-rule.ts'
import { copperRule } from './agree/copper-rule.ts'
import { crankRule } from './agree/crank-rule.ts'
import { loadRule } from './agree/load-rule.ts'
import { sumsRule } from './agree/sums-rule.ts'
import { wordedPathsRule } from './agree/worded-paths-rule.ts'
import { barePinsRule } from './bare-pins-rule.ts'
import { coloursRule } from './colours-rule.ts'
import { driveRule } from './drive-rule.ts'
import { familyRule } from './family-rule.ts'
import { farOffRule } from './far-off-rule.ts'
import { idlePathRule } from './idle-path-rule.ts'
import { pathsRule } from './paths-rule.ts'
import { unmatchedRule } from './unmatched-rule.ts'

/**
 * What is most likely a slip but may be right, and so refuses nothing. A rule looks at one sheet or
 * complaint, beside others where they tell what is usual, and may trust that the knowledge is sound.
 */
export const doubts: readonly Rule[] = [
  barePinsRule,
  coloursRule,
  pathsRule,
  wordedPathsRule,
  idlePathRule,
  driveRule,
  farOffRule,
  alikeRule,
  copperRule,
  crankRule,
  sumsRule,
  loadRule,
  unmatchedRule,
  familyRule,
]
