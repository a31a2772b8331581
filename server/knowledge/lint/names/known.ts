import type { Knowledge } from '../../knowledge.ts'
import type { CheckKind } from '../../schema/index.ts'

export function rolesOf({ roles }: Knowledge): string[] {
  return Object.keys(roles.roles)
}

export const gatesOf = once((knowledge) => {
  const complaints = [...knowledge.complaints.values()]
  return [...new Set(complaints.flatMap((c) => Object.keys({ ...c.gates, ...c.watched })))]
})

export const propertiesOf = once((knowledge) => {
  const kinds = [...knowledge.partKinds.values()]
  return [...new Set(kinds.flatMap((kind) => Object.keys(kind.properties)))]
})

/** What the other checks look at: a name that stands in one file alone makes nothing alike. */
export function otherLooks({ checkKinds }: Knowledge, check: CheckKind): string[] {
  const others = [...checkKinds.values()].filter((other) => other !== check)
  return [...new Set(others.flatMap(({ looksAt }) => looksAt ?? []))]
}

/** Gathered once: every check asks for them, and for some of them twice. */
function once(gather: (knowledge: Knowledge) => readonly string[]) {
  const kept = new WeakMap<Knowledge, readonly string[]>()
  return (knowledge: Knowledge): readonly string[] => {
    const known = kept.get(knowledge) ?? gather(knowledge)
    kept.set(knowledge, known)
    return known
  }
}

/** The failure modes of every kind of part that can play a role. */
export function modesOf({ roles, partKinds }: Knowledge, role: string): string[] {
  const kinds = roles.roles[role]?.kinds ?? []
  return [...new Set(kinds.flatMap((kind) => partKinds.get(kind)?.modes.map(({ id }) => id) ?? []))]
}
