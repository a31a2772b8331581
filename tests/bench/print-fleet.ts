import { shippedCases } from '../support/knowledge.ts'
import { print } from './budgets.ts'
import { fleet, type Tally, together, type Way, ways } from './fleet.ts'

const heading =
  '                                   minutes  checks   right   wrong  undecided  wasted'

/** Prints the simulated fleet, complaint by complaint, and all together; and all together for more seeds. */
export function printFleet(walks: number, seed: number, more: readonly number[] = []): void {
  console.log(`simulated fleet, ${walks} jobs each, seed ${seed}`)
  console.log(heading)
  const all = shippedCases().map((kase) => {
    const tallies = fleet(kase, walks, seed)
    printTallies(`${kase.complaint.id} on ${kase.machine.id}`, tallies)
    return tallies
  })
  printTallies('all together', summed(all))
  const others = more.flatMap((each) => shippedCases().map((kase) => fleet(kase, walks, each)))
  const overall = summed([...all, ...others])
  printTallies(`all together, seeds ${[seed, ...more].join(', ')}`, overall)
  const { tool, chart } = overall
  print('minutes of the tool over those of the chart', tool.minutes / chart.minutes, '', {
    atMost: 0.5,
  })
  print('right parts of the tool over those of the chart', tool.right / chart.right, '', {
    atLeast: 1,
  })
}

function summed(tallies: readonly Record<Way, Tally>[]): Record<Way, Tally> {
  const sum = (way: Way) => together(tallies.map((each) => each[way]))
  return { tool: sum('tool'), chart: sum('chart'), paper: sum('paper'), random: sum('random') }
}

function printTallies(name: string, tallies: Record<Way, Tally>): void {
  console.log(name)
  for (const way of ways) console.log(`  ${way.padEnd(30)}${line(tallies[way])}`)
}

function line({ walks, minutes, checks, right, wrong, undecided, wasted }: Tally): string {
  const mean = (sum: number) => (sum / walks).toFixed(1).padStart(8)
  const share = (count: number) => `${((100 * count) / walks).toFixed(1)} %`.padStart(8)
  return `${mean(minutes)}${mean(checks)}${share(right)}${share(wrong)}  ${share(undecided)}${mean(wasted)}`
}
