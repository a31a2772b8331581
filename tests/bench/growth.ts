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

/** Milliseconds of the steps of a walk, one after another along a job. */
export interface Steps {
  /** The first arranges the tables, as the first page of a case does. */
  readonly first: number
  /** The median of those after it. */
  readonly later: number
}

export function stepMilliseconds(cutSets: number, checks: number): Steps {
  const model = modelOf(cutSets, checks)
  const impossible = new Set<string>()
  const times: number[] = []
  const evidence: { check: string; likelihoods: number[] }[] = []
  for (let step = 0; step < 9; step += 1) {
    const began = performance.now()
    const now = walk(model, { evidence, impossible })
    times.push(performance.now() - began)
    if (now.step.kind !== 'ask') break
    evidence.push({ check: now.step.proposal.check, likelihoods: [step % 2, 1 - (step % 2), 0] })
  }
  const [first = 0, ...others] = times
  const later = others.sort((a, b) => a - b)[others.length >> 1]!
  return { first, later }
}

/**
 * Milliseconds to go once through every chance of a model of that size and add up p·log p: what any
 * way of ranking all its checks has to do at least.
 */
export function passMilliseconds(cutSets: number, checks: number): number {
  const { checks: all } = modelOf(cutSets, checks)
  const times: number[] = []
  let sum = 0
  for (let round = 0; round < 9; round += 1) {
    const began = performance.now()
    for (const { chances } of all) {
      for (const row of chances) for (const chance of row) sum += chance * Math.log(chance)
    }
    times.push(performance.now() - began)
  }
  if (!Number.isFinite(sum)) throw new Error('a chance of the model is no number')
  return times.sort((a, b) => a - b)[times.length >> 1]!
}
