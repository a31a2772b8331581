import type { Machine, Part } from '../../schema/machine.ts'

/** The outputs that a part serves by itself; none where it serves the whole machine. */
export function outputsServed({ output }: Pick<Part, 'output'>): readonly string[] {
  if (output === undefined) return []
  return typeof output === 'string' ? [output] : output
}

/** The one output that a part serves; undefined where it serves several, or all. */
export function onlyOutput(part: Pick<Part, 'output'>): string | undefined {
  const [output, ...others] = outputsServed(part)
  return others.length === 0 ? output : undefined
}

/** Whether a part serves an output and sits at another one: it hangs on the other tower of the coil. */
export function isTwin(part: Pick<Part, 'output'>, output: string | undefined): boolean {
  const [seat, ...others] = outputsServed(part)
  return output !== undefined && seat !== output && others.includes(output)
}

/**
 * The parts of a role, as seen from an output: those that serve it, or the shared ones where it has none
 * of its own. Seen from the whole machine: all.
 */
export function partsOf({ parts }: Machine, role: string, output?: string): Part[] {
  const ofRole = parts.filter((part) => part.role === role)
  if (output === undefined) return ofRole
  const own = ofRole.filter((part) => outputsServed(part).includes(output))
  return own.length > 0 ? own : ofRole.filter((part) => part.output === undefined)
}

/**
 * What may change places to see whether a fault moves with it: the one part of a role that serves an output,
 * with each that serves others and is of the same kind. Seen from the whole machine: every two of them.
 */
export function swapsOf(
  machine: Machine,
  role: string,
  output?: string,
): (readonly [Part, Part])[] {
  const ofRole = machine.parts.filter((part) => part.role === role && part.output !== undefined)
  const own = output === undefined ? ofRole : sittingAt(machine, role, output)
  if (output !== undefined && own.length !== 1) return []
  return own.flatMap((one) =>
    ofRole
      .filter((other) => other.kind === one.kind && mayFollow(one, other, output))
      .map((other) => [one, other] as const),
  )
}

/** Of several parts that serve an output, those that sit at it; they name it first. */
function sittingAt(machine: Machine, role: string, output: string): Part[] {
  const serving = partsOf(machine, role, output)
  if (serving.length === 1) return serving
  return serving.filter((part) => outputsServed(part)[0] === output)
}

function mayFollow(one: Part, other: Part, output: string | undefined): boolean {
  // Seen from the whole machine each two are meant once.
  if (output === undefined) return one.id < other.id
  return !outputsServed(other).includes(output)
}
