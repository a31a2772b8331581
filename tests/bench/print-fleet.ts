import { shippedCases } from '../support/knowledge.ts'
import { fleet, type Tally, together, type Way, ways } from './fleet.ts'

const heading =
  '                                   minutes  checks   right   wrong  undecided  wasted'

/** Prints the simulated fleet, complaint by complaint, and all together; and all together for more seeds. */
export function printFleet(walks: number, seed: number, more: readonly number[] = []): void {
  console.log(`simulated fleet, ${walks} jobs each, seed ${seed}`)
  console.log(heading)
  const all = shippedCases().map((kase) => {
    const tallies = fleet(kase, walks, seed)
    print(`${kase.complaint.id} on ${kase.machine.id}`, tallies)
    return tallies
  })
  print('all together', summed(all))
  const others = more.flatMap((each) => shippedCases().map((kase) => fleet(kase, walks, each)))
  if (more.length > 0)
    print(`all together, seeds ${[seed, ...more].join(', ')}`, summed([...all, ...others]))
}

function summed(tallies: readonly Record<Way, Tally>[]): Record<string, Tally> {
  return Object.fromEntries(ways.map((way) => [way, together(tallies.map((each) => each[way]))]))
}

function print(name: string, tallies: Record<string, Tally>): void {
  console.log(name)
  for (const way of ways) console.log(`  ${way.padEnd(30)}${line(tallies[way]!)}`)
}

function line({ walks, minutes, checks, right, wrong, undecided, wasted }: Tally): string {
  const mean = (sum: number) => (sum / walks).toFixed(1).padStart(8)
  const share = (count: number) => `${((100 * count) / walks).toFixed(1)} %`.padStart(8)
  return `${mean(minutes)}${mean(checks)}${share(right)}${share(wrong)}  ${share(undecided)}${mean(wasted)}`
}
