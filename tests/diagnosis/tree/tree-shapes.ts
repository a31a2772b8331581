import type { FaultTree, Gate } from '../../../server/diagnosis/tree/fault-tree.ts'

export function treeOf(gates: Readonly<Record<string, Gate>>): FaultTree {
  return { top: 'top', gates: new Map(Object.entries(gates)) }
}

export function or(...inputs: string[]): Gate {
  return { kind: 'or', inputs }
}

export function and(...inputs: string[]): Gate {
  return { kind: 'and', inputs }
}

export function atLeast(k: number, ...inputs: string[]): Gate {
  return { kind: 'atLeast', k, inputs }
}

export function names(count: number, prefix = 'f'): string[] {
  return Array.from({ length: count }, (_, i) => `${prefix}${i}`)
}

/** As many gates as asked for, called `gate 0`, `gate 1`, …, each made from its number. */
function gates(count: number, made: (i: number) => Gate): Record<string, Gate> {
  return Object.fromEntries(names(count, 'gate ').map((name, i) => [name, made(i)]))
}

/** Any of `count` ands of `size` faults each: `count` cut sets. */
export function orOfAnds(count: number, size: number): FaultTree {
  const below = gates(count, (i) => and(...names(size, `f${i}.`)))
  return treeOf({ top: { kind: 'or', inputs: Object.keys(below) }, ...below })
}

/** All of `factors` ors of `size` faults each: size^factors cut sets. */
export function productOfOrs(factors: number, size: number): FaultTree {
  const below = gates(factors, (i) => or(...names(size, `f${i}.`)))
  return treeOf({ top: and(...Object.keys(below)), ...below })
}

/** The same with one fault in each of the ors: that fault alone, and size^factors without it. */
export function productWithCommonCause(factors: number, size: number): FaultTree {
  const below = gates(factors, (i) => or(...names(size, `f${i}.`), 'common'))
  return treeOf({ top: and(...Object.keys(below)), ...below })
}

/** At least k of n parts of `modes` faults each: C(n, k)·modes^k cut sets. */
export function voteOfParts(k: number, n: number, modes: number): FaultTree {
  const below = gates(n, (i) => or(...names(modes, `f${i}.`)))
  return treeOf({ top: atLeast(k, ...Object.keys(below)), ...below })
}

/**
 * Each gate stands under both inputs of the one above: two faults a storey, one of which must be
 * there. 2^storeys cut sets, and as many ways down from the top.
 */
export function diamonds(storeys: number): FaultTree {
  const made: Record<string, Gate> = {}
  for (let i = 0; i < storeys; i += 1) {
    const below = i === storeys - 1 ? [] : [`storey ${i + 1}`]
    made[`storey ${i}`] = or(`left ${i}`, `right ${i}`)
    made[`left ${i}`] = and(`a${i}`, ...below)
    made[`right ${i}`] = and(`b${i}`, ...below)
  }
  return { top: 'storey 0', gates: new Map(Object.entries(made)) }
}

/** f0 or (f1 and (f2 or (f3 and …))), 2·pairs + 1 faults: pairs + 1 cut sets, the last of pairs + 1. */
export function chain(pairs: number): FaultTree {
  const made: Record<string, Gate> = {}
  for (let i = 0; i < pairs; i += 1) {
    const below = i === pairs - 1 ? `f${2 * pairs}` : `gate ${2 * i + 2}`
    made[`gate ${2 * i}`] = or(`f${2 * i}`, `gate ${2 * i + 1}`)
    made[`gate ${2 * i + 1}`] = and(`f${2 * i + 1}`, below)
  }
  return { top: 'gate 0', gates: new Map(Object.entries(made)) }
}

/**
 * The faults two by two, each with its neighbour in a ring and with its inverse modulo the prime
 * number of them. Few cut sets, but no order of the faults keeps those of a pair together, so that
 * every decision diagram is large. The graph is a known expander (from memory).
 *
 * @param prime how many faults
 */
export function entangledPairs(prime: number): FaultTree {
  const ring = names(prime).map((_, i) => [i, (i + 1) % prime])
  const inverses = names(prime).map((_, i) => [i, inverse(i, prime)])
  const pairs = [...ring, ...inverses].filter(([a, b]) => a !== b)
  const below = gates(pairs.length, (i) => and(`f${pairs[i]![0]}`, `f${pairs[i]![1]}`))
  return treeOf({ top: or(...Object.keys(below)), ...below })
}

/** The number that gives 1 when multiplied modulo a prime; 0 of 0. */
function inverse(i: number, prime: number): number {
  return names(prime).findIndex((_, j) => (i * j) % prime === (i === 0 ? 0 : 1))
}
