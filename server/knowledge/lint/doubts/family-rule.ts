import { distance } from 'fastest-levenshtein'
import type { Knowledge } from '../../knowledge.ts'
import type { Report } from '../report.ts'

/** Sheets of one family share what was confirmed on them, and a slip in its name would part them unseen. */
export function familyRule(knowledge: Knowledge, report: Report): void {
  const known: string[] = []
  for (const [, machine] of knowledge.machines) {
    const { family } = machine
    const other = known.find((each) => each !== family && isASlipFrom(each, family))
    if (other !== undefined) {
      const says = `“${family}” is nearly “${other}”: if they are one family, write both alike`
      report.add(machine, ['family'], says)
    }
    known.push(family)
  }
}

/** Families have names of some length; one letter more, less or otherwise, or only another case, is a slip. */
const isASlipFrom = (one: string, other: string): boolean =>
  distance(one.toLowerCase(), other.toLowerCase()) <= 1
