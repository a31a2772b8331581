/**
 * Keeps what is made of two things, once for both, and no longer than both are there. Things that were read anew are
 * other things.
 */
export function keptFor<One extends object, Other extends object, Made>(
  make: (one: One, other: Other) => Made,
): (one: One, other: Other) => Made {
  const kept = new WeakMap<One, WeakMap<Other, { readonly made: Made }>>()
  return (one, other) => {
    const others = kept.get(one) ?? new WeakMap<Other, { readonly made: Made }>()
    kept.set(one, others)
    const known = others.get(other) ?? { made: make(one, other) }
    others.set(other, known)
    return known.made
  }
}
