import { type ByAbout, byAbout } from '../by-about.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Complaint, Machine } from '../schema/index.ts'
import { known, type Report } from './report.ts'

/** Every name that a file uses is one that another file, or the same one, gives. */
export function namesRule(knowledge: Knowledge, report: Report): void {
  const cautions = Object.keys(knowledge.cautions.cautions)
  const tools = Object.keys(knowledge.tools.tools)
  const setups = Object.keys(knowledge.setups.setups)
  const mustKnow = mustKnowIn(report)

  for (const [, kind] of knowledge.partKinds) {
    mustKnow(kind, ['cautions'], 'caution', kind.cautions, cautions)
    kind.modes.forEach((mode, m) => {
      const named = Object.keys(mode.shows)
      mustKnow(kind, ['modes', m, 'shows'], 'property', named, Object.keys(kind.properties))
    })
  }
  for (const [, kind] of knowledge.checkKinds) {
    mustKnow(kind, ['cautions'], 'caution', kind.cautions, cautions)
    mustKnow(kind, ['tools'], 'tool', kind.tools, tools)
    mustKnow(kind, ['setups'], 'set-up', kind.setups, setups)
    mustKnow(kind, ['forbids'], 'set-up', kind.forbids, setups)
    mustKnow(kind, ['place', 'role'], 'role', listOf(kind.place?.role), rolesOf(knowledge))
    mustKnow(
      kind,
      ['place', 'property'],
      'property',
      listOf(kind.place?.property),
      propertiesOf(knowledge),
    )
    kind.answers?.forEach(({ mend }, a) => {
      mustKnow(kind, ['answers', a, 'mend', 'roles'], 'role', mend?.roles, rolesOf(knowledge))
    })
    byAbout(aboutNames, kind.about, kind, knowledge, mustKnow)
  }
  for (const [, machine] of knowledge.machines) machineNames(machine, knowledge, mustKnow)
  for (const [, complaint] of knowledge.complaints) {
    mustKnow(complaint, ['cautions'], 'caution', complaint.cautions, cautions)
    mustKnow(complaint, ['group'], 'group', [complaint.group], Object.keys(knowledge.groups.groups))
    complaintNames(complaint, knowledge, mustKnow)
  }
  for (const [id, setup] of Object.entries(knowledge.setups.setups)) {
    mustKnow(knowledge.setups, ['setups', id, 'tools'], 'tool', setup.tools, tools)
    mustKnow(knowledge.setups, ['setups', id, 'excludes'], 'set-up', setup.excludes, setups)
  }
  for (const [id, { neededWhen }] of Object.entries(knowledge.cautions.cautions)) {
    const path = ['cautions', id, 'neededWhen', 'quantity']
    const quantities = [...Object.keys(knowledge.quantities), 'answers']
    mustKnow(knowledge.cautions, path, 'quantity', neededWhen?.quantity, quantities)
  }
}

type MustKnow = (
  entry: object,
  path: readonly PropertyKey[],
  what: string,
  names: readonly string[] | undefined,
  among: readonly string[],
) => void

function mustKnowIn(report: Report): MustKnow {
  return (entry, path, what, names, among) => {
    for (const name of names ?? []) {
      if (!among.includes(name)) {
        report.add(entry, path, `no ${what} is called ${name}: ${known(among)}`)
      }
    }
  }
}

const aboutNames: ByAbout<[entry: object, knowledge: Knowledge, mustKnow: MustKnow], void> = {
  property: (about, entry, knowledge, mustKnow) => {
    const path = ['about', 'property']
    mustKnow(entry, path, 'property', [about.property], propertiesOf(knowledge))
    mustKnow(entry, ['about', 'roles'], 'role', about.roles, rolesOf(knowledge))
    mustKnow(entry, ['about', 'within'], 'gate', about.within, gatesOf(knowledge))
  },
  gate: (about, entry, knowledge, mustKnow) => {
    const gates = gatesOf(knowledge)
    const roles = rolesOf(knowledge)
    mustKnow(entry, ['about', 'gate'], 'gate', [about.gate], gates)
    mustKnow(entry, ['about', 'without'], 'gate', listOf(about.without), gates)
    mustKnow(entry, ['about', 'replacing'], 'role', listOf(about.replacing), roles)
    mustKnow(entry, ['about', 'swapping'], 'role', listOf(about.swapping), roles)
    mustKnow(entry, ['about', 'shows'], 'property', listOf(about.shows), propertiesOf(knowledge))
    const { measured } = about
    if (measured === undefined) return
    mustKnow(entry, ['about', 'measured', 'role'], 'role', [measured.role], roles)
    const path = ['about', 'measured', 'property']
    mustKnow(entry, path, 'property', [measured.property], propertiesOf(knowledge))
  },
  question: (about, entry, knowledge, mustKnow) => {
    about.when.forEach(({ gate }, i) => {
      mustKnow(entry, ['about', 'when', i, 'gate'], 'gate', [gate], gatesOf(knowledge))
    })
  },
}

function machineNames(machine: Machine, knowledge: Knowledge, mustKnow: MustKnow): void {
  const connectors = Object.keys(machine.connectors)
  const setups = Object.keys(knowledge.setups.setups)
  const access = Object.keys(machine.access)
  const outputs = machine.outputs.map(({ id }) => id)
  const parts = machine.parts.map(({ id }) => id)
  const colours = Object.keys(knowledge.colours.colours)
  for (const [id, cover] of Object.entries(machine.access)) {
    mustKnow(machine, ['access', id, 'for'], 'set-up', cover.for, setups)
  }
  mustKnow(machine, ['stop', 'plugs'], 'connector', machine.stop?.plugs, connectors)
  for (const [id, connector] of Object.entries(machine.connectors)) {
    mustKnow(machine, ['connectors', id, 'access'], 'access', connector.access, access)
    for (const [pin, { wire }] of Object.entries(connector.pins)) {
      mustKnow(machine, ['connectors', id, 'pins', pin, 'wire'], 'colour', wire, colours)
    }
  }
  machine.parts.forEach((part, p) => {
    const at = ['parts', p]
    mustKnow(machine, [...at, 'kind'], 'part kind', [part.kind], [...knowledge.partKinds.keys()])
    mustKnow(machine, [...at, 'output'], 'output', listOf(part.output), outputs)
    mustKnow(machine, [...at, 'plugs'], 'connector', part.plugs, connectors)
    const properties = Object.keys(knowledge.partKinds.get(part.kind)?.properties ?? {})
    mustKnow(machine, [...at, 'limits'], 'property', Object.keys(part.limits ?? {}), properties)
    part.reach?.forEach((reach, r) => {
      const here = [...at, 'reach', r]
      mustKnow(machine, [...here, 'at'], 'connector', listOf(reach.at), connectors)
      mustKnow(machine, [...here, 'for'], 'property', reach.for, properties)
      mustKnow(machine, [...here, 'through'], 'part', reach.through, parts)
      mustKnow(machine, [...here, 'output'], 'output', listOf(reach.output), outputs)
      mustKnow(machine, [...here, 'access'], 'access', reach.access, access)
    })
  })
}

function complaintNames(complaint: Complaint, knowledge: Knowledge, mustKnow: MustKnow): void {
  const roles = rolesOf(knowledge)
  const all = { ...complaint.gates, ...complaint.watched }
  mustKnow(complaint, ['needs'], 'role', complaint.needs, roles)
  const checks = [...knowledge.checkKinds.keys()]
  mustKnow(complaint, ['chart'], 'check', complaint.chart, checks)
  mustKnow(complaint, ['top'], 'gate', [complaint.top], Object.keys(complaint.gates))
  for (const [section, gates] of Object.entries({
    gates: complaint.gates,
    watched: complaint.watched ?? {},
  })) {
    for (const [id, gate] of Object.entries(gates)) {
      const inputs = gate.or ?? gate.and ?? gate.atLeast?.of ?? []
      inputs.forEach((input, i) => {
        const word = gate.or ? 'or' : gate.and ? 'and' : 'atLeast'
        const path = [section, id, word, ...(word === 'atLeast' ? ['of'] : []), i]
        if ('gate' in input) {
          mustKnow(complaint, path, 'gate', [input.gate], Object.keys(all))
          return
        }
        const target = 'any' in input ? input.any : input.each
        mustKnow(complaint, path, 'role or gate', [target], [...roles, ...Object.keys(all)])
        const modes = modesOf(knowledge, target)
        const except = 'except' in input ? (input.except ?? []) : []
        const named = [...(input.modes ?? []), ...except]
        mustKnow(complaint, path, `failure mode of ${target}`, named, modes)
      })
    }
  }
}

function listOf(name: string | undefined): string[] {
  return name === undefined ? [] : [name]
}

function rolesOf(knowledge: Knowledge): string[] {
  const roles = [...knowledge.machines.values()].flatMap(({ parts }) => parts.map((p) => p.role))
  return [...new Set(roles)]
}

function gatesOf(knowledge: Knowledge): string[] {
  const complaints = [...knowledge.complaints.values()]
  return [...new Set(complaints.flatMap((c) => Object.keys({ ...c.gates, ...c.watched })))]
}

function propertiesOf(knowledge: Knowledge): string[] {
  const kinds = [...knowledge.partKinds.values()]
  return [...new Set(kinds.flatMap((kind) => Object.keys(kind.properties)))]
}

/** The failure modes of every kind of part that plays a role on some machine. */
function modesOf(knowledge: Knowledge, role: string): string[] {
  const parts = [...knowledge.machines.values()].flatMap((machine) => machine.parts)
  const kinds = new Set(parts.filter((part) => part.role === role).map((part) => part.kind))
  return [...kinds].flatMap((kind) => knowledge.partKinds.get(kind)?.modes.map((m) => m.id) ?? [])
}
