/** x·ln x, continued by 0 at 0: the term of an entropy. Nothing below 0 is expected; it gives 0, too. */
export function xLogX(x: number): number {
  return x > 0 ? x * Math.log(x) : 0
}
