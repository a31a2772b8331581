import { escaped } from './xml.ts'

/** A branch of a fault tree as it is to be drawn. Whatever is folded away is counted, not drawn. */
export interface DrawnBranch {
  readonly says: string
  /** How the inputs make it: `1` any of them, `all`, or at least that many; left out for a fault. */
  readonly gate?: number | 'all'
  /** 0 to 1, for the width of the line; printed as `percent`. */
  readonly probability: number
  readonly percent: string
  readonly cleared: boolean
  /** The reading that cleared it, or nothing. */
  readonly note?: string
  /** The check that is asked for now would decide here. */
  readonly asked: boolean
  readonly below: readonly DrawnBranch[]
  /** How many faults below are folded away. */
  readonly folded: number
}

interface Row {
  readonly branch: DrawnBranch
  readonly depth: number
  readonly lines: readonly Line[]
  readonly top: number
  readonly height: number
  /** The row of the gate above; null for the top. */
  readonly above: Row | null
}

/** The name of a branch, or what is said of it below: the reading that cleared it, what is folded away. */
interface Line {
  readonly text: string
  readonly of: 'name' | 'note'
}

/** Units of the drawing; on a phone of 360 px one unit is about a pixel. */
const width = 340
const step = 18
const line = 16
const margin = 8
const percentWidth = 54
const askedWidth = 20
/** Mean width of a letter at the size the style sheet sets, with some to spare. */
const letter = 7.3
const gateSize = 20

/**
 * The fault tree as an SVG, ready to print: from the top event down, gates by their function as
 * IEC 61025 and IEC 60617-12 write it (≥1 for any, & for all, ≥k for at least k), each branch on a line
 * as heavy as its probability, a cleared one cut through, and a mark where the next check decides.
 * Presentation is left to classes; nothing is told by colour alone.
 */
export function treeDrawing(top: DrawnBranch, label: string): string {
  const rows: Row[] = []
  layOut(top, 0, null, rows)
  const height = endOf(rows) + margin
  const pipes = rows.map((row) => (row.above === null ? '' : pipe(row, row.above)))
  return [
    `<svg class="tree-drawing" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escaped(label)}">`,
    ...pipes,
    ...rows.map(drawn),
    '</svg>',
  ].join('')
}

/** Where the next row begins. */
function endOf(rows: readonly Row[]): number {
  const last = rows.at(-1)
  return last === undefined ? margin : last.top + last.height
}

function layOut(branch: DrawnBranch, depth: number, above: Row | null, rows: Row[]): void {
  const mark = branch.asked ? askedWidth : 0
  const room = Math.floor((width - textAt(depth) - percentWidth - mark) / letter)
  const lines = [
    ...linesOf('name', branch.says, room),
    ...linesOf('note', branch.note ?? '', room),
    ...linesOf('note', foldedWords(branch), room),
  ]
  const height = Math.max(gateSize + 6, lines.length * line + 10)
  const row = { branch, depth, lines, top: endOf(rows), height, above }
  rows.push(row)
  for (const each of branch.below) layOut(each, depth + 1, row, rows)
}

function foldedWords({ folded }: DrawnBranch): string {
  if (folded === 0) return ''
  return folded === 1 ? '1 fault folded' : `${folded} faults folded`
}

function linesOf(of: Line['of'], text: string, room: number): Line[] {
  return text === '' ? [] : wrapped(text, Math.max(10, room)).map((line) => ({ text: line, of }))
}

const gateAt = (depth: number) => margin + depth * step
const textAt = (depth: number) => gateAt(depth) + gateSize + 6
const middle = (row: Row) => row.top + Math.min(row.height, gateSize + 6) / 2

/** From the gate above down and across; as heavy as the branch is probable. */
function pipe(row: Row, above: Row): string {
  const { probability, cleared } = row.branch
  const x = gateAt(above.depth) + gateSize / 2
  const [from, to] = [middle(above) + gateSize / 2, middle(row)]
  const end = gateAt(row.depth) + (row.branch.gate === undefined ? gateSize / 2 - 6 : 0)
  const heavy = cleared ? 1 : 1 + 5 * probability
  const path = `<path class="${cleared ? 'pipe cleared' : 'pipe'}" fill="none" stroke-width="${heavy.toFixed(1)}" d="M${x} ${from}V${to}H${end}"/>`
  if (!cleared) return path
  const cut = (x + gateAt(row.depth)) / 2
  return `${path}<path class="cut" fill="none" d="M${cut - 4} ${to + 5}L${cut + 4} ${to - 5}"/>`
}

function drawn(row: Row): string {
  const { branch, depth, lines } = row
  const x = textAt(depth)
  const first = middle(row) + 5
  const says = lines
    .map(
      ({ text, of }, i) =>
        `<tspan class="${of}" x="${x}" y="${first + i * line}">${escaped(text)}</tspan>`,
    )
    .join('')
  return [
    `<g class="${branch.cleared ? 'branch cleared' : 'branch'}">`,
    symbol(row),
    `<text class="says">${says}</text>`,
    `<text class="percent" x="${width - margin}" y="${first}" text-anchor="end">${escaped(branch.percent)}</text>`,
    branch.asked ? askedMark(row) : '',
    '</g>',
  ].join('')
}

function symbol(row: Row): string {
  const x = gateAt(row.depth)
  const y = middle(row) - gateSize / 2
  const { gate } = row.branch
  const centre = x + gateSize / 2
  if (gate === undefined) {
    return `<circle class="fault" cx="${centre}" cy="${middle(row)}" r="6"/>`
  }
  const mark = gate === 'all' ? '&amp;' : `≥${gate}`
  return `<rect class="gate" x="${x}" y="${y}" width="${gateSize}" height="${gateSize}"/><text class="function" x="${centre}" y="${y + 14}" text-anchor="middle">${mark}</text>`
}

/** A flag with a question mark at the branch that the next check decides. */
function askedMark(row: Row): string {
  const x = width - margin - percentWidth + 4
  const y = middle(row)
  return `<g class="asked"><circle cx="${x - 8}" cy="${y}" r="8"/><text x="${x - 8}" y="${y + 4}" text-anchor="middle">?</text></g>`
}

function wrapped(text: string, room: number): string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const current = lines.at(-1)
    if (current !== undefined && current.length + word.length < room) {
      lines[lines.length - 1] = `${current} ${word}`
    } else lines.push(word)
  }
  return lines
}
