import type { z } from 'zod'
import { CheckKind } from './check-kind.ts'
import { Complaint } from './complaint.ts'
import { Glossary } from './glossary.ts'
import { Machine } from './machine.ts'
import { PartKind } from './part-kind.ts'
import { Home } from './phone/home.ts'
import { Owner } from './phone/owner.ts'
import { Cautions, Colours, Groups, Meter, Roles, Setups, Tools } from './tables.ts'
import { Circuit } from './wiring/circuit.ts'

/** Which files under `trees/` follow which schema. The name is also the name of its JSON Schema. */
export interface FileKind {
  readonly name: string
  /** A folder of files, or one file. */
  readonly folder?: string
  readonly file?: string
  readonly schema: z.ZodType
}

export const fileKinds: readonly FileKind[] = [
  { name: 'complaint', folder: 'complaints', schema: Complaint },
  { name: 'part-kind', folder: 'parts', schema: PartKind },
  { name: 'check-kind', folder: 'checks', schema: CheckKind },
  { name: 'machine', folder: 'machines', schema: Machine },
  { name: 'circuit', folder: 'circuits', schema: Circuit },
  { name: 'meter', folder: 'meters', schema: Meter },
  { name: 'tools', file: 'tools.yaml', schema: Tools },
  { name: 'setups', file: 'setups.yaml', schema: Setups },
  { name: 'cautions', file: 'cautions.yaml', schema: Cautions },
  { name: 'colours', file: 'colours.yaml', schema: Colours },
  { name: 'groups', file: 'groups.yaml', schema: Groups },
  { name: 'roles', file: 'roles.yaml', schema: Roles },
  { name: 'glossary', file: 'glossary.yaml', schema: Glossary },
  { name: 'owner', file: 'owner.yaml', schema: Owner },
  { name: 'home', file: 'home.yaml', schema: Home },
]

export {
  Cautions,
  CheckKind,
  Circuit,
  Colours,
  Complaint,
  Glossary,
  Groups,
  Home,
  Machine,
  Meter,
  Owner,
  PartKind,
  Roles,
  Setups,
  Tools,
}
