import { faultsBelow } from '../../../diagnosis/tree/fault-tree.ts'
import type { CheckCard } from '../../../knowledge/case.ts'
import { drawTree } from '../../../knowledge/instantiate/tree.ts'
import { swapsOf } from '../../../knowledge/instantiate/where/outputs.ts'
import type { CheckKind } from '../../../knowledge/schema/check-kind.ts'
import type { Random } from '../../world/chance.ts'
import { partOfFault, type TrueMachine } from '../../world/machine.ts'
import { partNamed, servedBy } from '../../world/sheet.ts'
import { sparkAt } from '../../world/work/spark.ts'
import { isKnown } from '../by-wiring.ts'
import type { Hidden } from '../hidden.ts'
import { kindOf } from '../kind.ts'
import type { Making } from '../making.ts'
import { momentOf } from '../moment.ts'
import { speedOf } from '../speed.ts'

type OfGate = Extract<CheckKind['about'], { kind: 'gate' }>

/** What a check that looks at a spark is about; undefined for any other. */
export function sparkOf({ knowledge }: Hidden, card: CheckCard): OfGate | undefined {
  const { about } = kindOf(knowledge, card)
  return about.kind === 'gate' && about.spark !== undefined ? about : undefined
}

/** The answer of a check that looks at a spark, by the weakest of three pulls; null where the wiring does not tell. */
export function sparkSeen(
  hidden: Hidden,
  card: CheckCard,
  { stands, pull }: Making,
  random: Random,
): string | null {
  const { truth, air } = hidden
  const about = sparkOf(hidden, card)
  if (truth === null || about === undefined || !isKnown(hidden, truth, card)) return null
  const now = momentOf(changed(hidden, truth, about, card), card, stands, air)
  const rpm = Math.min(...[0, 1, 2].map(() => speedOf(pull, random)))
  const sparks = outputsSeen(hidden, about, card).map((output) => sparkAt(now, output, rpm))
  if (sparks.includes(null)) return null
  // In whichever cap the tester sits, it is there for a spark in any.
  const spark = Math.max(...sparks.map((each) => each ?? 0))
  const falling = Object.entries(about.spark ?? {}).sort(([, a], [, b]) => b - a)
  return falling.find(([, least]) => spark >= least)?.[0] ?? null
}

/** Of a gate that each output has, the one that is looked at; else all. */
function outputsSeen(
  { kase }: Hidden,
  { gate }: OfGate,
  { id, part }: CheckCard,
): readonly string[] {
  const all = kase.machine.outputs.map((output) => output.id)
  if (kase.gates.has(gate)) return all
  const named = all.filter((output) => id.split('.').includes(output))
  if (named.length > 0) return named
  const served = part === undefined ? [] : servedBy(partNamed(kase.machine, part))
  return served.length > 0 ? served.slice(0, 1) : all
}

/** The faults of a gate, in every copy of it. */
function faultsOf(gate: string, { knowledge, kase: { complaint, machine } }: Hidden): string[] {
  const { gates, copies } = drawTree(knowledge, complaint, machine)
  return (copies.get(gate) ?? []).flatMap(({ name }) => faultsBelow({ top: name, gates }, name))
}

/** The machine as the check changes it: without the faults of a gate, with a known good part, with two that changed places. */
function changed(hidden: Hidden, truth: TrueMachine, about: OfGate, card: CheckCard): TrueMachine {
  const { kase, faults } = hidden
  const { without, replacing, swapping } = about
  if ([without, replacing, swapping].every((each) => each === undefined)) return truth
  const below = without === undefined ? [] : faultsOf(without, hidden)
  const away = new Set(faults.filter((fault) => below.includes(fault)).map(partOfFault))
  const [output] = outputsSeen(hidden, about, card)
  const swaps = swapping === undefined ? [] : swapsOf(kase.machine, swapping, output)
  const pair = swaps.find(([, other]) => card.id.endsWith(`.${other.id}`)) ?? swaps[0]
  const [one, other] = pair?.map(({ id }) => id) ?? []
  const sound = { leg: 0 }
  return {
    ...truth,
    effect: (part) => {
      if (away.has(part) || (replacing !== undefined && part === card.part)) return sound
      if (part === one && other !== undefined) return truth.effect(other)
      return part === other && one !== undefined ? truth.effect(one) : truth.effect(part)
    },
  }
}
