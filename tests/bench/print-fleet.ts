import { shippedCases } from '../support/knowledge.ts'
import { fleet, type Tally, together, ways } from './fleet.ts'

/** Prints the simulated fleet, complaint by complaint, and all together. */
export function printFleet(walks: number, seed: number): void {
  console.log(`simulated fleet, ${walks} jobs each, seed ${seed}`)
  console.log(
    '                                   minutes  checks   right   wrong  undecided  wasted',
  )
  const all = shippedCases().map((kase) => {
    const tallies = fleet(kase, walks, seed)
    print(`${kase.complaint.id} on ${kase.machine.id}`, tallies)
    return tallies
  })
  print(
    'all together',
    Object.fromEntries(ways.map((way) => [way, together(all.map((each) => each[way]))])),
  )
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
