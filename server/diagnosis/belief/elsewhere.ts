import { mixed } from '../model/chances.ts'
import type { Check, Evidence, Model } from '../model/model.ts'
import { type Alike, alike } from './alike.ts'
import { checkNamed } from './belief.ts'
import { type Row, slippingOf } from './slipping.ts'

/**
 * The checks not made yet that look at what others have looked at, with their chances as those readings
 * have left them.
 */
export function asReadElsewhere(model: Model, evidence: readonly Evidence[]): Check[] {
  const read = new Set(evidence.map(({ check }) => check))
  const seen = seenIn(model, evidence)
  return model.checks.filter(({ id }) => !read.has(id)).flatMap((check) => given(check, seen) ?? [])
}

/** The same of one check; as it is where no reading bears on it. */
export function asItIsRead(model: Model, evidence: readonly Evidence[], check: Check): Check {
  return (check.alike && given(check, seenIn(model, evidence))) || check
}

function seenIn(model: Model, evidence: readonly Evidence[]): Alike {
  const seen = alike()
  for (const item of evidence) seen.after(checkNamed(model, item.check), item)
  return seen
}

/** The check with its rows as the readings of its like have left them; null where none bears on it. */
function given(check: Check, seen: Alike): Check | null {
  if (check.alike === undefined || check.slips === undefined) return null
  const { slips } = slippingOf(check)
  // Many cut sets have one past.
  const rows = new Map<Row, Row>()
  const chances = check.chances.map((row, c) => {
    const own = seen.before(check, c)
    if (own === undefined) return row
    const now = rows.get(own) ?? mixed(own, slips)
    rows.set(own, now)
    return now
  })
  return rows.size === 0 ? null : { ...check, chances }
}
