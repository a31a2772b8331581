import { outputsServed } from '../../instantiate/where/outputs.ts'
import { throughOf } from '../../instantiate/where/path.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Machine } from '../../schema/index.ts'
import { rolesOf } from './known.ts'
import { listOf, type MustKnow } from './must-know.ts'

/** The names that a sheet uses. */
export function machineNames(machine: Machine, knowledge: Knowledge, mustKnow: MustKnow): void {
  const connectors = Object.keys(machine.connectors)
  const setups = Object.keys(knowledge.setups.setups)
  const tools = Object.keys(knowledge.tools.tools)
  const access = Object.keys(machine.access)
  const outputs = machine.outputs.map(({ id }) => id)
  const parts = machine.parts.map(({ id }) => id)
  const colours = Object.keys(knowledge.colours.colours)
  for (const [id, cover] of Object.entries(machine.access)) {
    mustKnow(machine, ['access', id, 'for'], 'set-up', cover.for, setups)
    mustKnow(machine, ['access', id, 'tools'], 'tool', cover.tools, tools)
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
    mustKnow(machine, [...at, 'role'], 'role', [part.role], rolesOf(knowledge))
    mustKnow(machine, [...at, 'access'], 'access', part.access, access)
    mustKnow(machine, [...at, 'kind'], 'part kind', [part.kind], [...knowledge.partKinds.keys()])
    mustKnow(machine, [...at, 'output'], 'output', outputsServed(part), outputs)
    mustKnow(machine, [...at, 'plugs'], 'connector', part.plugs, connectors)
    const properties = Object.keys(knowledge.partKinds.get(part.kind)?.properties ?? {})
    mustKnow(machine, [...at, 'limits'], 'property', Object.keys(part.limits ?? {}), properties)
    part.reach?.forEach((reach, r) => {
      const here = [...at, 'reach', r]
      mustKnow(machine, [...here, 'at'], 'connector', listOf(reach.at), connectors)
      mustKnow(machine, [...here, 'for'], 'property', reach.for, properties)
      mustKnow(machine, [...here, 'through'], 'part', throughOf(reach), parts)
      reach.through?.forEach((each, w) => {
        if (typeof each === 'string') return
        const kind = machine.parts.find(({ id }) => id === each.part)?.kind ?? ''
        const modes = knowledge.partKinds.get(kind)?.modes.map(({ id }) => id) ?? []
        const what = `failure mode of ${each.part}`
        mustKnow(machine, [...here, 'through', w, 'modes'], what, each.modes, modes)
      })
      mustKnow(machine, [...here, 'output'], 'output', listOf(reach.output), outputs)
      mustKnow(machine, [...here, 'access'], 'access', reach.access, access)
    })
  })
}
