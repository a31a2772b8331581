import type { Unit } from '../../measure/reading/units.ts'
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
  /** What each of its properties is, and the unit that its limits are in; none of what is looked at. */
  readonly properties: ReadonlyMap<string, { readonly says: string; readonly unit?: Unit }>
}

/** One for each declared role, in the order of their file. */
export function rolesReport(knowledge: Knowledge): RoleReport[] {
  const { complaints, checkKinds, partKinds, quantities, roles } = knowledge
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
      properties: new Map(
        properties.map(([name, { quantity, says }]) => {
          const unit = quantities[quantity]?.unit
          return [name, { says, ...(unit && { unit }) }]
        }),
      ),
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

/** As it is printed among all: a paragraph a role. */
export function printRole(report: RoleReport): string {
  return paragraph(report, [...asked(report), ['limits for', report.limits], checks(report)])
}

/** As it is printed alone: a line for each property that a sheet may give limits for, or say in reach where it is seen. */
export function printRoleInFull(report: RoleReport): string {
  const lines = [...report.properties].map(
    ([name, { says, unit }]) => `    ${name}: ${says}${unit ? `, in ${unit}` : ', looked at'}`,
  )
  return [
    paragraph(report, [...asked(report), checks(report)]),
    '  on it, or through it where another part is read:',
    ...lines,
  ].join('\n')
}

type Told = readonly [what: string, names: readonly string[]]

const asked = ({ kinds, neededBy, inTreeOf }: RoleReport): Told[] => [
  ['played by', kinds],
  ['needed by', neededBy],
  ['in the tree of', inTreeOf],
]

const checks = (report: RoleReport): Told => ['checks', report.checks]

function paragraph({ role, says }: RoleReport, lines: readonly Told[]): string {
  const told = lines.filter(([, names]) => names.length > 0)
  return [`${role} ${says}`, ...told.map(([what, names]) => `  ${what}: ${names.join(', ')}`)].join(
    '\n',
  )
}
