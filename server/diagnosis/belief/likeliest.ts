/** Place of the greatest of some numbers, the first where several are; −1 for none. */
export function likeliest(chances: readonly number[]): number {
  return chances.indexOf(Math.max(...chances))
}
