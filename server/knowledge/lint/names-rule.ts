import type { Knowledge } from '../knowledge.ts'
import type { PartKind } from '../schema/index.ts'
import { checkNames } from './names/check.ts'
import { circuitNames } from './names/circuit.ts'
import { complaintNames } from './names/complaint.ts'
import { rolesOf } from './names/known.ts'
import { machineNames } from './names/machine.ts'
import { type MustKnow, mustKnowIn } from './names/must-know.ts'
import type { Report } from './report.ts'

/** Every name that a file uses is one that another file, or the same one, gives. */
export function namesRule(knowledge: Knowledge, report: Report): void {
  const mustKnow = mustKnowIn(report)
  for (const [, kind] of knowledge.partKinds) partKindNames(kind, knowledge, mustKnow)
  for (const [, check] of knowledge.checkKinds) checkNames(check, knowledge, mustKnow)
  for (const [, machine] of knowledge.machines) machineNames(machine, knowledge, mustKnow)
  for (const [, circuit] of knowledge.circuits) circuitNames(circuit, knowledge, mustKnow, report)
  for (const [, complaint] of knowledge.complaints) complaintNames(complaint, knowledge, mustKnow)
  tableNames(knowledge, mustKnow)
}

function partKindNames(kind: PartKind, knowledge: Knowledge, mustKnow: MustKnow): void {
  mustKnow(kind, ['cautions'], 'caution', kind.cautions, Object.keys(knowledge.cautions.cautions))
  const roles = rolesOf(knowledge)
  kind.modes.forEach(({ shows, rate }, m) => {
    const at = ['modes', m]
    mustKnow(kind, [...at, 'shows'], 'property', Object.keys(shows), Object.keys(kind.properties))
    mustKnow(kind, [...at, 'rate', 'roles'], 'role', Object.keys(rate.roles ?? {}), roles)
  })
}

/** The names that the tables use. */
function tableNames(knowledge: Knowledge, mustKnow: MustKnow): void {
  const { tools, setups, cautions, roles, partKinds } = knowledge
  const names = Object.keys(setups.setups)
  for (const [id, setup] of Object.entries(setups.setups)) {
    mustKnow(setups, ['setups', id, 'tools'], 'tool', setup.tools, Object.keys(tools.tools))
    mustKnow(setups, ['setups', id, 'excludes'], 'set-up', setup.excludes, names)
  }
  const quantities = [...Object.keys(knowledge.quantities), 'answers']
  for (const [id, { neededWhen, roles: of }] of Object.entries(cautions.cautions)) {
    const path = ['cautions', id, 'neededWhen', 'quantity']
    mustKnow(cautions, path, 'quantity', neededWhen?.quantity, quantities)
    mustKnow(cautions, ['cautions', id, 'roles'], 'role', of, rolesOf(knowledge))
  }
  for (const [id, { kinds }] of Object.entries(roles.roles)) {
    mustKnow(roles, ['roles', id, 'kinds'], 'part kind', kinds, [...partKinds.keys()])
  }
}
