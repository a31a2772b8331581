/** The same with ordinary spaces for no-break ones, so that a test can be read and typed. */
export function plain<T>(value: T): T {
  return JSON.parse(JSON.stringify(value).replaceAll('\u00a0', ' '))
}
