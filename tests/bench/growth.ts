import type { Model } from '../../server/diagnosis/model/model.ts'
import { walk } from '../../server/diagnosis/walk.ts'
import { seeded } from './random.ts'

/** A model of that size: each check sees a few parts well and the others not at all. */
function modelOf(cutSets: number, checks: number): Model {
  const random = seeded(99)
  const healthy = [0.94, 0.03, 0.03]
  const faulty = [0.05, 0.6, 0.35]
  const names = Array.from({ length: cutSets }, (_, c) => `part ${c}`)
  return {
    tree: { top: 'top', gates: new Map([['top', { kind: 'or', inputs: names }]]) },
    cutSets: names.map((name) => ({ faults: [name], parts: [name], prior: 1 / cutSets })),
    checks: Array.from({ length: checks }, (_, k) => {
      const reach = 1 + Math.floor((random() * cutSets) / 4)
      const from = Math.floor(random() * cutSets)
      return {
        id: `check ${k}`,
        minutes: 1 + Math.floor(random() * 9),
        setups: [{ id: `set-up ${k % 20}`, minutes: 2, undo: 1 }],
        outcomes: ['good', 'bad', 'odd'],
        chances: names.map((_, c) => ((c - from + cutSets) % cutSets < reach ? faulty : healthy)),
      }
    }),
  }
}

/** Milliseconds for one step of a walk, the median of several along a job. */
export function stepMilliseconds(cutSets: number, checks: number): number {
  const model = modelOf(cutSets, checks)
  const impossible = new Set<string>()
  const times: number[] = []
  const evidence: { check: string; likelihoods: number[] }[] = []
  // The first step arranges the tables, as the first page of a case does; it is not counted.
  for (let step = 0; step < 9; step += 1) {
    const began = performance.now()
    const now = walk(model, { evidence, impossible })
    if (step > 0) times.push(performance.now() - began)
    if (now.step.kind !== 'ask') break
    evidence.push({ check: now.step.proposal.check, likelihoods: [step % 2, 1 - (step % 2), 0] })
  }
  return times.sort((a, b) => a - b)[times.length >> 1]!
}
