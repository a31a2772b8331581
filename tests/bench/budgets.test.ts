import { execFile } from 'node:child_process'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'

const budgets = resolve(import.meta.dirname, 'budgets.ts')

/** A run in a process of its own, as the bench is one. */
function run(...figures: readonly string[]) {
  const lines = [
    `import { print, sumUp } from ${JSON.stringify(budgets)}`,
    ...figures.map((figure) => `print(${figure})`),
    'sumUp()',
  ]
  const given = ['--import', 'tsx', '--input-type=module', '--eval', lines.join('\n')]
  return new Promise<{ code: number | null; printed: string; complained: string }>((ended) => {
    const child = execFile(process.execPath, given, (_error, printed, complained) =>
      ended({ code: child.exitCode, printed, complained }),
    )
  })
}

const kept = ['"weight", 5, "kg", { atMost: 5 }', '"speed", 0.4, "", { atLeast: 0.4 }']

it('ends with 0 where every budget is kept, at its edge as well', async () => {
  const { code, printed, complained } = await run(...kept, '"no budget", 9, "s"')
  expect({ code, complained }).toEqual({ code: 0, complained: '' })
  expect(printed.match(/kept/g)).toHaveLength(2)
})

it('ends with 1 where one is missed, and says which', async () => {
  const { code, complained } = await run(...kept, '"size", 6, "kB", { atMost: 5 }')
  expect(code).toBe(1)
  expect(complained).toBe('missed: size: 6.00 kB, at most 5 kB wanted\n')
  const ratio = await run('"ratio", 0.1, "", { atLeast: 0.4 }')
  expect(ratio.complained).toBe('missed: ratio: 0.10, at least 0.4 wanted\n')
})

it('does not take for kept what is no number', async () => {
  expect((await run('"speed", Number.NaN, "", { atLeast: 0.4 }')).code).toBe(1)
})
