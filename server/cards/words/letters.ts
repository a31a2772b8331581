/** Letters in all texts of a view. */
export function lettersIn(value: unknown): number {
  if (typeof value === 'string') return value.length
  if (typeof value !== 'object' || value === null) return 0
  return Object.values(value).reduce((sum: number, each) => sum + lettersIn(each), 0)
}
