/** What a cell may hold; null is an empty one. */
export type Cell = string | number | null

/** One line as RFC 4180 has it: quotes where a field needs them, CRLF at its end. */
export function csvLine(cells: readonly Cell[]): string {
  return `${cells.map(field).join(',')}\r\n`
}

function field(cell: Cell): string {
  const text = typeof cell === 'string' ? asText(cell) : String(cell ?? '')
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/**
 * What begins like a formula is worked out by the program that opens the file, whoever typed it. An
 * apostrophe before it makes it text there (OWASP, CSV injection); a plain number needs none.
 */
function asText(typed: string): string {
  const text = typed.replaceAll('\u00a0', ' ')
  const isNumber = /^[+-]?\d+([.,]\d+)?$/.test(text)
  return /^[=+\-@\t\r\n＝＋－＠]/.test(text) && !isNumber ? `'${text}` : text
}
