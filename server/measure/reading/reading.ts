/**
 * What came back from a check, as it was meant. Values are in the quantity's SI unit without prefix.
 * `over` is a meter showing OL.
 */
export type Reading =
  | { readonly kind: 'value'; readonly value: number }
  | { readonly kind: 'over' }
  | { readonly kind: 'answer'; readonly answer: string }
  | { readonly kind: 'could-not-tell' }

/** What came back from one check in order: each touch of the probes, or each look. */
export type Touches = readonly [Reading, ...Reading[]]

/**
 * The low and high value that a machine's sheet gives, both inclusive, in the quantity's SI unit.
 * At least one of the two is there.
 */
export interface Limits {
  readonly low?: number
  readonly high?: number
}
