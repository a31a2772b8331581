import { type CutSetsResult, minimalCutSets } from '../../server/diagnosis/tree/cut-sets.ts'
import { type FaultTree, faultsBelow, type Gate } from '../../server/diagnosis/tree/fault-tree.ts'
import * as shape from '../diagnosis/tree/tree-shapes.ts'
import { seeded } from './random.ts'

/** A generated tree of one shape; those of a shape grow. */
interface Generated {
  readonly name: string
  readonly tree: () => FaultTree
}

/** About a thousand, ten thousand and a hundred thousand cut sets of each shape, and some beyond. */
const generated: readonly Generated[] = [
  ...sized('or of ands of 2', (n) => shape.orOfAnds(n, 2), [1000, 10_000, 100_000, 600_000]),
  ...sized('and of n ors of 10', (n) => shape.productOfOrs(n, 10), [3, 4, 5, 50, 1000]),
  ...sized('the same, one fault in all', (n) => shape.productWithCommonCause(n, 10), [3, 4, 5]),
  ...sized('n out of 20', (n) => shape.voteOfParts(n, 20, 1), [3, 5, 7, 10]),
  ...sized('500 out of n', (n) => shape.voteOfParts(500, n, 1), [1000, 2000]),
  ...sized('n out of 20 parts, 2 modes each', (n) => shape.voteOfParts(n, 20, 2), [2, 3, 4, 10]),
  ...sized('gates shared n deep', shape.diamonds, [10, 13, 16, 1000, 10_000]),
  ...sized('chain of 2 n gates', shape.chain, [1000, 2000, 10_000, 100_000]),
  ...sized('n gates at random, shared', randomTree, [60, 90, 120, 150, 300]),
  ...sized('n faults in entangled pairs', shape.entangledPairs, [31, 61, 101]),
]

function sized(name: string, of: (n: number) => FaultTree, sizes: readonly number[]): Generated[] {
  return sizes.map((n) => ({ name: `${name}, n = ${n}`, tree: () => of(n) }))
}

/** Storeys of thirty gates over a hundred faults; each has two to four inputs from the storey below, or faults. */
function randomTree(gates: number): FaultTree {
  const random = seeded(7)
  const pick = (from: readonly string[]) => from[Math.floor(random() * from.length)]!
  const faults = shape.names(100)
  const made: Record<string, Gate> = {}
  let below = faults
  for (let storey = 0; storey < gates / 30; storey += 1) {
    const own = shape.names(30, `gate ${storey}.`)
    for (const name of own) {
      const drawn = shape.names(2 + Math.floor(random() * 3))
      const inputs = new Set(drawn.map(() => pick(random() < 0.75 ? below : faults)))
      made[name] = random() < 0.5 ? shape.or(...inputs) : shape.and(...inputs)
    }
    below = own
  }
  return shape.treeOf({ top: shape.atLeast(6, ...below), ...made })
}

/** Prints for each tree its size, and how many cut sets it has or why not, and how long that took. */
export function printLargeTrees(): void {
  console.log(
    'generated trees                                  gates  faults    cut sets        ms',
  )
  for (const { name, tree } of generated) {
    const made = tree()
    const began = performance.now()
    const result = minimalCutSets(made)
    const took = performance.now() - began
    const faults = faultsBelow(made, made.top).length
    console.log(
      `  ${name.padEnd(44)}${cell(made.gates.size, 8)}${cell(faults, 8)}` +
        `${cell(count(result), 12)}${cell(took.toFixed(0), 10)}${refusal(result)}`,
    )
  }
}

const cell = (value: number | string, width: number) => String(value).padStart(width)

function count(result: CutSetsResult): string {
  if (result.kind === 'tooLarge') return '?'
  const sets = result.kind === 'found' ? result.cutSets.length : result.count
  if (sets === Number.POSITIVE_INFINITY) return '> 10^308'
  return sets < 1e9 ? String(sets) : sets.toPrecision(3)
}

function refusal(result: CutSetsResult): string {
  switch (result.kind) {
    case 'found':
      return ''
    case 'tooMany':
      return `  refused: counted, more than ${result.limit} to list`
    case 'tooLong':
      return `  refused: counted, ${result.names} names in all, at most ${result.maxNames}`
    case 'tooLarge':
      return `  refused: more than ${result.maxNodes} nodes in any order`
  }
}
