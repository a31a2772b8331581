import { rolesIn } from '../fits.ts'
import { inputsOf, targetOf } from '../instantiate/tree.ts'
import type { Knowledge } from '../knowledge.ts'
import type { CheckKind, Complaint } from '../schema/index.ts'

/** What a role is for, and what a part that plays it switches on. */
export interface RoleReport {
  readonly role: string
  /** "charges the igniter" */
  readonly says: string
  readonly kinds: readonly string[]
  /** Complaints that ask for it, and those whose tree has a branch for it besides. */
  readonly neededBy: readonly string[]
  readonly inTreeOf: readonly string[]
  /** Checks made at it, about it, or with its limits. */
  readonly checks: readonly string[]
  /** Properties that a sheet may give limits for. */
  readonly limits: readonly string[]
}

/** One for each declared role, in the order of their file. */
export function rolesReport(knowledge: Knowledge): RoleReport[] {
  const { complaints, checkKinds, partKinds, roles } = knowledge
  return Object.entries(roles.roles).map(([role, { says, kinds }]) => {
    const properties = kinds.flatMap((kind) =>
      Object.entries(partKinds.get(kind)?.properties ?? {}),
    )
    const measured = properties.filter(([, { quantity }]) => quantity !== 'answers')
    const names = new Set(properties.map(([name]) => name))
    const needing = [...complaints.values()].filter(({ needs }) =>
      needs.flatMap(rolesIn).includes(role),
    )
    const naming = [...complaints.values()].filter((complaint) => namesRole(complaint, role))
    return {
      role,
      says,
      kinds,
      neededBy: needing.map(({ id }) => id),
      inTreeOf: naming.filter((each) => !needing.includes(each)).map(({ id }) => id),
      checks: [...checkKinds.values()]
        .filter((check) => isMadeFor(check, role, names))
        .map(({ id }) => id),
      limits: [...new Set(measured.map(([name]) => name))],
    }
  })
}

function namesRole({ gates, watched }: Complaint, role: string): boolean {
  return Object.values({ ...gates, ...watched }).some((gate) =>
    inputsOf(gate).some((input) => !('gate' in input) && targetOf(input) === role),
  )
}

function isMadeFor({ about, place }: CheckKind, role: string, properties: ReadonlySet<string>) {
  if (place?.role === role) return true
  switch (about.kind) {
    case 'property':
      return properties.has(about.property) && (about.roles?.includes(role) ?? true)
    case 'gate':
      return [about.measured?.role, about.replacing, about.swapping].includes(role)
    case 'question':
    case 'which':
      return false
  }
}

/** As it is printed: a paragraph a role. */
export function printRole(report: RoleReport): string {
  const lines = [
    ['played by', report.kinds],
    ['needed by', report.neededBy],
    ['in the tree of', report.inTreeOf],
    ['limits for', report.limits],
    ['checks', report.checks],
  ] as const
  const told = lines.filter(([, names]) => names.length > 0)
  return [
    `${report.role} ${report.says}`,
    ...told.map(([what, names]) => `  ${what}: ${names.join(', ')}`),
  ].join('\n')
}
