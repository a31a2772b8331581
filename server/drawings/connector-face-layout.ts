import type { FaceOptions } from './connector-face-options.ts'
import { box, short } from './svg.ts'

export const narrowest = 320
export const edge = 4
export const latchDepth = 20
export const groundWidth = 68
/** Room above each cavity for its flag. */
const flagHeight = 26
/** Between neighbours: a cavity with its heavy ring on either side. */
const gap = 10

export interface Spot {
  readonly pin: number | null
  /** Middle of the cavity, from the middle of the body. */
  readonly x: number
  readonly y: number
}
export interface Body {
  readonly halfWidth: number
  readonly halfHeight: number
  /** Width and height of a cavity. */
  readonly size: number
  readonly outline: string
  readonly spots: readonly Spot[]
}

/** The body with its cavities, as large as fits beside a latch and a ground. */
export function bodyOf(options: FaceOptions): Body {
  return options.shape === 'round' ? roundBody(options) : blockBody(options)
}

function blockBody({ rows, latch, touch }: FaceOptions): Body {
  const columns = Math.max(...rows.map((row) => row.length))
  const sideways = (latch === 'left' || latch === 'right' ? latchDepth : 0) + 2 * edge + gap
  const room = narrowest - sideways - (touch.includes('ground') ? groundWidth : 0)
  const size = Math.min(52, Math.max(30, room / columns - gap))
  const pitch = size + gap
  const rowHeight = pitch + flagHeight
  const halfWidth = (columns * pitch + gap) / 2
  const halfHeight = (rows.length * rowHeight + gap) / 2
  const spots = rows.flatMap((row, r) =>
    row.map((pin, c) => ({
      pin,
      x: (c - (row.length - 1) / 2) * pitch,
      y: (r - (rows.length - 1) / 2) * rowHeight + flagHeight / 2,
    })),
  )
  const outline = `<rect ${box(-halfWidth, -halfHeight, 2 * halfWidth, 2 * halfHeight)} rx="10" stroke-width="2.5"/>`
  return { halfWidth, halfHeight, size, outline, spots }
}

function roundBody({ rows }: FaceOptions): Body {
  const size = 48
  const cell = { width: size + gap, height: size + gap + flagHeight }
  let radius = 0
  let cells: Spot[] = []
  for (const row of rows.toReversed()) {
    if (cells.length > 0 || row.length > 1) radius += size / 2
    while (!apart([...cells, ...circle(row, radius)], cell)) radius += 2
    cells = [...cells, ...circle(row, radius)]
  }
  const corners = cells.map(({ x, y }) =>
    Math.hypot(Math.abs(x) + cell.width / 2, Math.abs(y) + cell.height / 2),
  )
  const half = Math.max(...corners)
  const spots = cells.map((spot) => ({ ...spot, y: spot.y + flagHeight / 2 }))
  const outline = `<circle r="${short(half)}" stroke-width="2.5"/>`
  return { halfWidth: half, halfHeight: half, size, outline, spots }
}

const circle = (row: readonly (number | null)[], radius: number): Spot[] =>
  row.map((pin, i) => {
    const angle = (2 * Math.PI * i) / row.length
    return { pin, x: radius * Math.sin(angle), y: -radius * Math.cos(angle) }
  })

/** Whether no two cells, each a cavity with room for its flag, cover each other. */
const apart = (spots: readonly Spot[], cell: { width: number; height: number }) =>
  spots.every((a, i) =>
    spots
      .slice(i + 1)
      .every((b) => Math.abs(a.x - b.x) >= cell.width || Math.abs(a.y - b.y) >= cell.height),
  )
