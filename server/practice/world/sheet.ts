import type { Machine, Part } from '../../knowledge/schema/machine.ts'
import { parseQuantityText } from '../../measure/reading/parse.ts'

/** What a sheet gives for one property of a part, as numbers in Ω or V. */
export interface SheetValue {
  readonly low?: number
  readonly high?: number
  readonly rpm?: number
}

/** The lint has read every figure of a sheet before. */
const number = (text: string) => parseQuantityText(text)?.value ?? Number.NaN

export function limitsOn(part: Part, property: string): SheetValue | undefined {
  const given = part.limits?.[property]
  if (given === undefined) return undefined
  return {
    ...(given.low !== undefined && { low: number(given.low) }),
    ...(given.high !== undefined && { high: number(given.high) }),
    ...(given.rpm !== undefined && { rpm: given.rpm }),
  }
}

export function partNamed(machine: Machine, id: string): Part {
  const part = machine.parts.find((each) => each.id === id)
  if (part === undefined) throw new Error(`The sheet of ${machine.id} has no part ${id}.`)
  return part
}

/** The outputs that a part serves; none where it serves them all. */
export const servedBy = ({ output }: Part): readonly string[] =>
  output === undefined ? [] : [output].flat()

/** The parts of a role: those of one output, the shared ones where it has none of its own, or all. */
export function partsIn(machine: Machine, role: string, output?: string): readonly Part[] {
  const all = machine.parts.filter((part) => part.role === role)
  if (output === undefined) return all
  const own = all.filter((part) => servedBy(part).includes(output))
  // What serves several sits at the one it names first.
  const sitting = own.toSorted((a, b) => seatRank(a, output) - seatRank(b, output))
  return own.length > 0 ? sitting : all.filter((part) => part.output === undefined)
}

const seatRank = (part: Part, output: string): number => servedBy(part).indexOf(output)
