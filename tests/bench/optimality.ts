import { greedy, planner } from '../outside/sequencing.ts'
import { leastMinutes, plannedMinutes } from '../support/misleading-optimum.ts'
import { optimalCost, policyCost } from '../support/oracles/exact.ts'
import { misleadingModels, smallTables } from '../support/small-models.ts'

/** Expected cost over the least there is: 1 is the optimum. */
export interface Ratios {
  readonly count: number
  readonly mean: number
  readonly worst: number
}

export function ratiosOf(ratios: readonly number[]): Ratios {
  const mean = ratios.reduce((a, b) => a + b, 0) / ratios.length
  return { count: ratios.length, mean, worst: Math.max(...ratios) }
}

/** On random tables where every outcome is certain. */
export function onTables(count: number, seed: number): { planner: Ratios; greedy: Ratios } {
  const models = smallTables(count, seed).filter((model) => optimalCost(model) > 0)
  const by = (policy: typeof planner) =>
    ratiosOf(models.map((model) => policyCost(model, policy(model)) / optimalCost(model)))
  return { planner: by(planner), greedy: by(greedy) }
}

/** On random models whose outcomes mislead, with the price of a wrong part in the cost. */
export function onMisleading(count: number, seed: number): Ratios {
  return ratiosOf(
    misleadingModels(count, seed).map((model) => plannedMinutes(model) / leastMinutes(model)),
  )
}

export function printOptimality(): void {
  const { planner, greedy } = onTables(300, 11)
  console.log('expected cost over the optimum                     models    mean   worst')
  line('certain outcomes: planner', planner)
  line('certain outcomes: gain per minute alone', greedy)
  line('outcomes that mislead, with prices: planner', onMisleading(200, 11))
}

function line(what: string, { count, mean, worst }: Ratios): void {
  console.log(
    `${what.padEnd(48)} ${String(count).padStart(8)} ${mean.toFixed(4).padStart(7)} ${worst.toFixed(4).padStart(7)}`,
  )
}
