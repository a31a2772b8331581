/** Long work that can be left off after each step and taken up again; returns its result at the end. */
export type Steps<T> = Generator<void, T>

/** Takes all steps at once, for those who have nothing else to do meanwhile. */
export function toTheEnd<T>(steps: Steps<T>): T {
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}
