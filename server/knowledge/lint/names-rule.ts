import { rolesIn } from '../fits.ts'
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
  ownerNames(knowledge, mustKnow)
  tableNames(knowledge, mustKnow)
}

function partKindNames(kind: PartKind, knowledge: Knowledge, mustKnow: MustKnow): void {
  const cautions = Object.keys(knowledge.cautions.cautions)
  mustKnow(kind, ['cautions'], 'caution', kind.cautions, cautions)
  const roles = rolesOf(knowledge)
  const kit = Object.keys(knowledge.owner.kit)
  const setups = Object.keys(knowledge.setups.setups)
  const opened = Object.keys(knowledge.home.halfOpen)
  kind.modes.forEach(({ shows, rate, mend }, m) => {
    const at = ['modes', m]
    mustKnow(kind, [...at, 'mend', 'kit'], 'thing in the kit', mend?.kit, kit)
    mustKnow(kind, [...at, 'mend', 'cautions'], 'caution', mend?.cautions, cautions)
    mustKnow(kind, [...at, 'mend', 'undoes'], 'set-up', mend?.undoes, setups)
    mustKnow(kind, [...at, 'mend', 'opens'], 'thing that is opened', mend?.opens, opened)
    mustKnow(kind, [...at, 'shows'], 'property', Object.keys(shows), Object.keys(kind.properties))
    mustKnow(kind, [...at, 'rate', 'roles'], 'role', Object.keys(rate.roles ?? {}), roles)
  })
}

/** The names that what is said to an owner uses. */
function ownerNames(
  { owner, home, tools, setups, cautions, roles, meters, partKinds }: Knowledge,
  mustKnow: MustKnow,
): void {
  const modes = [...partKinds.values()].flatMap((kind) => kind.modes.map(({ id }) => id))
  const kit = Object.keys(owner.kit)
  for (const [id, { gives }] of Object.entries(owner.kit)) {
    mustKnow(owner, ['kit', id, 'gives'], 'tool', gives, Object.keys(tools.tools))
  }
  for (const [id, set] of Object.entries(owner.sets)) {
    mustKnow(owner, ['sets', id, 'kit'], 'thing in the kit', set.kit, kit)
  }
  mustKnow(owner, ['meter'], 'meter', [owner.meter], [...meters.keys()])
  mustKnow(owner, ['cold', 'without'], 'thing in the kit', [owner.cold.without], kit)
  const toRun = Object.keys(home.toRun)
  mustKnow(home, ['toRun'], 'thing that is opened', toRun, Object.keys(home.halfOpen))
  const trial = home.trial.cautions
  mustKnow(home, ['trial', 'cautions'], 'caution', trial, Object.keys(cautions.cautions))
  for (const [id, way] of Object.entries(home.ways)) {
    const path = ['ways', id]
    mustKnow(home, [...path, 'kit'], 'thing in the kit', way.kit, kit)
    mustKnow(home, [...path, 'leaves'], 'set-up', way.leaves, Object.keys(setups.setups))
    const opened = Object.keys(home.halfOpen)
    mustKnow(home, [...path, 'opens'], 'thing that is opened', way.opens, opened)
    mustKnow(home, [...path, 'stays'], 'thing that is opened', way.stays, opened)
    mustKnow(home, [...path, 'cautions'], 'caution', way.cautions, Object.keys(cautions.cautions))
    mustKnow(home, [...path, 'modes'], 'failure mode', way.modes, modes)
    const needed = (way.roles ?? []).flatMap(rolesIn)
    mustKnow(home, [...path, 'roles'], 'role', needed, Object.keys(roles.roles))
  }
}

/** The names that the tables use. */
function tableNames(knowledge: Knowledge, mustKnow: MustKnow): void {
  const { tools, setups, cautions, roles, glossary, partKinds } = knowledge
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
  for (const [id, { kinds, see }] of Object.entries(glossary.words)) {
    mustKnow(glossary, ['words', id, 'kinds'], 'part kind', kinds, [...partKinds.keys()])
    mustKnow(glossary, ['words', id, 'see'], 'word', see, Object.keys(glossary.words))
  }
}
