/**
 * Which of many readings call their part bad, so that the chance of calling any good part bad over all of
 * them together stays at most `level`: the step-down rule of Holm (1979, "A simple sequentially rejective
 * multiple test procedure", Scandinavian Journal of Statistics 6, 65–70). The chances are ordered; the
 * smallest must be at most level/m, the next at most level/(m − 1), and so on until one is not.
 *
 * The chance that counts for one reading is that of a part which lies within its limits and reads so: for
 * the worst of those, one at the very limit, it is the conformance probability (JCGM 106) that the reading
 * leaves, poor touches included.
 *
 * @param chances one for each reading that there is, from 0 to 1
 * @param level from 0 to 1
 */
export function calledBad(chances: readonly number[], level: number): readonly boolean[] {
  const order = chances.map((_, i) => i).sort((a, b) => (chances[a] ?? 1) - (chances[b] ?? 1))
  const called = chances.map(() => false)
  for (const [k, i] of order.entries()) {
    if ((chances[i] ?? 1) > level / (chances.length - k)) break
    called[i] = true
  }
  return called
}

/** Over a whole check-over, good parts called bad: at most this often. */
export const manyLevel = 0.01
