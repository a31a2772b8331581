/** What a figure must keep to. */
export interface Budget {
  readonly atMost?: number
  readonly atLeast?: number
}

const missed: string[] = []

/** Prints what was measured, and whether its budget was kept where it has one. */
export function print(what: string, value: number, unit: string, budget?: Budget): void {
  const line = `${what.padEnd(58)} ${value.toFixed(2).padStart(8)} ${unit}`
  if (budget === undefined) {
    console.log(line)
    return
  }
  const { atMost = Number.POSITIVE_INFINITY, atLeast = Number.NEGATIVE_INFINITY } = budget
  const kept = value <= atMost && value >= atLeast
  const limit = budget.atMost === undefined ? `at least ${atLeast}` : `at most ${atMost}`
  console.log(`${line}  budget ${limit}: ${kept ? 'kept' : 'MISSED'}`)
  if (!kept) {
    const figures = [`${value.toFixed(2)} ${unit}`, `${limit} ${unit}`].map((text) => text.trim())
    missed.push(`${what}: ${figures.join(', ')} wanted`)
  }
}

/** Says which budgets were missed, and makes the whole run end with 1 if any was. */
export function sumUp(): void {
  for (const each of missed) console.error(`missed: ${each}`)
  if (missed.length > 0) process.exitCode = 1
}
