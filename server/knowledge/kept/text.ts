import type { Knowledge } from '../knowledge.ts'

/** All of it but the quantities, whose rows hold functions. */
type Written = Omit<Knowledge, 'quantities'>

/** JSON has no maps; a list of their entries keeps the order as well. */
type Plain = {
  readonly [Key in keyof Written]: Written[Key] extends ReadonlyMap<infer Name, infer Entry>
    ? readonly (readonly [Name, Entry])[]
    : Written[Key]
}

export function toText({ quantities: _, ...written }: Knowledge): string {
  return JSON.stringify(written, (_key, value) => (value instanceof Map ? [...value] : value))
}

/** Trusts that the text was made by `toText`. */
export function fromText(text: string): Written {
  const { complaints, partKinds, checkKinds, machines, circuits, meters, ...tables }: Plain =
    JSON.parse(text)
  return {
    ...tables,
    complaints: new Map(complaints),
    partKinds: new Map(partKinds),
    checkKinds: new Map(checkKinds),
    machines: new Map(machines),
    circuits: new Map(circuits),
    meters: new Map(meters),
  }
}
