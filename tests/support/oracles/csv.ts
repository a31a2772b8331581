/**
 * Reads CSV as RFC 4180 defines it, section 2, and takes nothing else: CRLF at the end of every line,
 * quotes around a whole field or not at all, doubled inside, and as many fields in every line as in the first.
 *
 * @throws Error with the place of what is not so.
 */
export function readCsv(text: string): string[][] {
  const lines: string[][] = []
  let at = 0
  while (at < text.length) {
    const line: string[] = []
    for (;;) {
      const { field, end } = text[at] === '"' ? quoted(text, at) : bare(text, at)
      line.push(field)
      at = end
      if (text[at] !== ',') break
      at += 1
    }
    if (text.slice(at, at + 2) !== '\r\n') throw new Error(`no CRLF at ${at}`)
    at += 2
    lines.push(line)
    if (line.length !== lines[0]!.length) throw new Error(`line ${lines.length} has ${line.length}`)
  }
  return lines
}

interface Field {
  readonly field: string
  readonly end: number
}

function quoted(text: string, from: number): Field {
  let field = ''
  for (let at = from + 1; at < text.length; at += 1) {
    if (text[at] !== '"') field += text[at]
    else if (text[at + 1] === '"') {
      field += '"'
      at += 1
    } else return { field, end: at + 1 }
  }
  throw new Error(`the quotes at ${from} never end`)
}

function bare(text: string, from: number): Field {
  const field = /^[^",\r\n]*/.exec(text.slice(from))![0]
  const end = from + field.length
  if (text[end] === '"') throw new Error(`quotes inside a bare field at ${end}`)
  return { field, end }
}
