import type { Knowledge } from '../../knowledge.ts'

export function rolesOf({ roles }: Knowledge): string[] {
  return Object.keys(roles.roles)
}

export function gatesOf(knowledge: Knowledge): string[] {
  const complaints = [...knowledge.complaints.values()]
  return [...new Set(complaints.flatMap((c) => Object.keys({ ...c.gates, ...c.watched })))]
}

export function propertiesOf(knowledge: Knowledge): string[] {
  const kinds = [...knowledge.partKinds.values()]
  return [...new Set(kinds.flatMap((kind) => Object.keys(kind.properties)))]
}

/** The failure modes of every kind of part that can play a role. */
export function modesOf({ roles, partKinds }: Knowledge, role: string): string[] {
  const kinds = roles.roles[role]?.kinds ?? []
  return [...new Set(kinds.flatMap((kind) => partKinds.get(kind)?.modes.map(({ id }) => id) ?? []))]
}
