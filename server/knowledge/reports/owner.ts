import type { Knowledge } from '../knowledge.ts'

/** Each check with whether an owner on the phone can make it: those that can first, and how many there are of both. */
export function ownerReport({ checkKinds, owner }: Knowledge): string[] {
  const rows = [...checkKinds.values()].map(({ id, owner: fit }) => {
    if (fit === 'yes') return { id, fit: true, says: 'yes' }
    if (typeof fit === 'string') return { id, fit: false, says: fit }
    return {
      id,
      fit: true,
      says: `with ${fit.needs.map((each) => owner.kit[each]?.asks ?? each).join(', ')}`,
    }
  })
  const fit = rows.filter((row) => row.fit)
  return [
    ...[...fit, ...rows.filter((row) => !row.fit)].map(({ id, says }) => `${id}: ${says}`),
    `${fit.length} of ${rows.length} checks are fit for an owner`,
  ]
}
