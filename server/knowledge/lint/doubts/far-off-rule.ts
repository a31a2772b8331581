import { named } from '../../../diagnosis/model/named.ts'
import { parseQuantityText } from '../../../measure/reading/parse.ts'
import { printLimits } from '../../../measure/reading/print.ts'
import type { Limits } from '../../../measure/reading/reading.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Report } from '../report.ts'
import { type Figure, figuresOf, sides } from './figures.ts'

/** A slip of the decimal mark is a factor of 10, of the prefix one of 1000; odd machines stay within this. */
const beyondUsual = 3
/** A few other sheets are no more than a few examples. */
const beyondOthers = 100

/** Limits lie where those of such a part lie on any machine: as its kind says, or else as other sheets do. */
export function farOffRule(knowledge: Knowledge, report: Report): void {
  const figures = new Map(
    [...knowledge.machines.values()].map((machine) => [machine, figuresOf(machine, knowledge)]),
  )
  for (const [machine, own] of figures) {
    const others = [...figures].flatMap(([other, theirs]) => (other === machine ? [] : theirs))
    for (const figure of own) {
      const span = usualFor(figure) ?? spanOf(figure, others)
      if (span === null) continue
      for (const side of sides) {
        const far = farness(figure.limits[side], span)
        if (far === null) continue
        const says =
          `${figure.part.id}: ${side}, ${figure.sheet[side]}, is far ${far} what such a part has, ` +
          `${printLimits(span, figure.quantity.unit)} ${whoSays(figure, knowledge, report)}: check its prefix and its digits`
        report.add(machine, [...figure.path, side], says)
      }
    }
  }
}

/** Far from what its kind says is usual: then it is the slip, and whatever else it does not fit is no news. */
export function isFarFromUsual(figure: Figure): boolean {
  const span = usualFor(figure)
  return span !== null && sides.some((side) => farness(figure.limits[side], span) !== null)
}

interface Span {
  readonly low: number
  readonly high: number
  /** How many times below or above that is too far. */
  readonly beyond: number
}

function farness(value: number | undefined, { low, high, beyond }: Span): 'below' | 'above' | null {
  // No limit at all, written as one, is no slip of a prefix.
  if (value === undefined || value === 0) return null
  if (value > high * beyond) return 'above'
  return value < low / beyond ? 'below' : null
}

function usualFor({ part, says: { usual } }: Figure): Span | null {
  if (usual === undefined) return null
  const { low, high } = usual.roles?.[part.role] ?? usual
  return { low: amountOf(low), high: amountOf(high), beyond: beyondUsual }
}

/** Where what is usual is written: "by parts/winding.yaml:12". */
function whoSays(
  { part, property, says }: Figure,
  knowledge: Knowledge,
  { locate }: Report,
): string {
  if (says.usual === undefined) return 'on other machines'
  const kind = named(knowledge.partKinds, part.kind)
  const { file, line } = locate(kind, ['properties', property, 'usual'])
  return `by ${file}:${line}`
}

/** Between the lowest and the highest that other machines give for it in the same role. */
function spanOf({ part, property }: Figure, others: readonly Figure[]): Span | null {
  const values = others
    .filter(
      (o) => o.property === property && o.part.kind === part.kind && o.part.role === part.role,
    )
    .flatMap(({ limits }: { limits: Limits }) => [limits.low, limits.high])
    .filter((value) => value !== undefined)
  if (values.length === 0) return null
  const [low, high] = [Math.min(...values), Math.max(...values)]
  return { low, high, beyond: beyondOthers }
}

/** The lint has seen to it that it is a value. */
const amountOf = (text: string) => parseQuantityText(text)?.value ?? Number.NaN
