import type { Quantities } from '../measure/reading/quantities.ts'
import type {
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
} from './schema/index.ts'

/** Everything under `trees/`, read and checked. Never changed while the server runs. */
export interface Knowledge {
  /** The kinds of reading that the properties of parts may be. */
  readonly quantities: Quantities
  readonly complaints: ReadonlyMap<string, Complaint>
  readonly partKinds: ReadonlyMap<string, PartKind>
  readonly checkKinds: ReadonlyMap<string, CheckKind>
  readonly machines: ReadonlyMap<string, Machine>
  /** How machines are wired, by machine; of some it is not known. */
  readonly circuits: ReadonlyMap<string, Circuit>
  readonly meters: ReadonlyMap<string, Meter>
  readonly tools: Tools
  readonly setups: Setups
  readonly cautions: Cautions
  readonly colours: Colours
  readonly groups: Groups
  readonly roles: Roles
  readonly glossary: Glossary
  readonly owner: Owner
  readonly home: Home
}

/** File and line of a place inside an entry; the nearest one that exists, if the path leads nowhere. */
export type Locate = (entry: object, path: readonly PropertyKey[]) => Location

export interface Location {
  /** Relative to the folder of trees. */
  readonly file: string
  readonly line: number
}

/** One thing wrong in the knowledge, in a sentence, with its place. */
export interface Problem extends Location {
  readonly says: string
}
