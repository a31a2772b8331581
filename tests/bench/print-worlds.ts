import { shippedCases } from '../support/knowledge.ts'
import { fleet, type Named, type Tally, together } from './fleet.ts'
import { type World, worlds } from './worlds.ts'

/** Where stated chances begin; the last bin ends at 1. */
const bins = [0.9, 0.95, 0.98, 0.995] as const

/** Prints what the tool does in worlds that differ from its tables, and how honest its stated chances are there. */
export function printWorlds(walks: number, seed: number): void {
  console.log(`worlds, ${walks} jobs a complaint and machine, seed ${seed}`)
  for (const [name, world] of Object.entries(worlds)) {
    const tool = inWorld(world, walks, seed)
    const share = (count: number) => `${((100 * count) / tool.walks).toFixed(1)} %`
    console.log(
      `  ${name.padEnd(28)} right ${share(tool.right)}, wrong ${share(tool.wrong)}, undecided ${share(tool.undecided)}, ${(tool.minutes / tool.walks).toFixed(1)} min, ${(tool.checks / tool.walks).toFixed(1)} checks`,
    )
    for (const line of binned(tool.named)) console.log(`    ${line}`)
  }
}

function inWorld(world: World, walks: number, seed: number): Tally {
  return together(shippedCases().map((kase) => fleet(kase, walks, seed, ['tool'], world).tool))
}

/** "stated 0.90 to 0.95: 0.93 on average, right 0.95, of 120" */
export function binned(named: readonly Named[]): string[] {
  return bins.flatMap((from, i) => {
    const to = bins[i + 1] ?? Number.POSITIVE_INFINITY
    const inside = named.filter(({ stated }) => stated >= from && stated < to)
    if (inside.length === 0) return []
    const mean = inside.reduce((sum, { stated }) => sum + stated, 0) / inside.length
    const right = inside.filter((each) => each.right).length / inside.length
    return [
      `stated ${from} to ${bins[i + 1] ?? 1}: ${mean.toFixed(3)} on average, right ${right.toFixed(3)}, of ${inside.length}`,
    ]
  })
}
