import type { Rule } from '../report.ts'
import { alikeRule } from './alike-rule.ts'
import { barePinsRule } from './bare-pins-rule.ts'
import { coloursRule } from './colours-rule.ts'
import { copperRule } from './copper-rule.ts'
import { driveRule } from './drive-rule.ts'
import { familyRule } from './family-rule.ts'
import { farOffRule } from './far-off-rule.ts'
import { loadRule } from './load-rule.ts'
import { pathsRule } from './paths-rule.ts'
import { sumsRule } from './sums-rule.ts'
import { unmatchedRule } from './unmatched-rule.ts'

/**
 * What is most likely a slip but may be right, and so refuses nothing. Each rule looks at one sheet or
 * complaint by itself, and may trust that the knowledge is sound.
 */
export const doubts: readonly Rule[] = [
  barePinsRule,
  coloursRule,
  pathsRule,
  driveRule,
  farOffRule,
  alikeRule,
  copperRule,
  sumsRule,
  loadRule,
  unmatchedRule,
  familyRule,
]
