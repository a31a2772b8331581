import { escaped } from './xml.ts'

/**
 * Draws the face of a connector, so that one finds the two pins to touch without a book. Our own
 * drawing: a body, numbered cavities with their wire's colours, and a lettered flag on a heavy ring
 * where a probe goes. The wire classes (`wire-bk`) give the fills; everything else is `currentColor`.
 */
export interface FaceOptions {
  /**
   * Pin numbers as one looks into the face; null is a cavity without a pin. Of a round connector each
   * row is a circle, outermost first, clockwise from the top; a circle of one is the centre.
   */
  readonly rows: readonly (readonly (number | null)[])[]
  readonly latch: 'top' | 'bottom' | 'left' | 'right' | 'none'
  readonly shape: 'block' | 'round'
  /** What probe A, B, … touches: a pin number as text, `ground`, or words for a place elsewhere. */
  readonly touch: readonly string[]
  /** "Igniter plug, looking into the harness half" */
  readonly label: string
  readonly pins: Readonly<Record<string, FaceWire>>
}

export interface FaceWire {
  /** "BK/RD" */
  readonly code: string
  /** Swatch classes, base first: `wire-bk`. */
  readonly swatches: readonly string[]
  /** "black with red tracer" */
  readonly name: string
}

/**
 * The face as an SVG element with class `connector-face`, sized by its `viewBox` alone: the page's
 * style sheet gives the width.
 *
 * @throws RangeError where a probe should touch a pin that the face does not have.
 */
export function connectorFace(options: FaceOptions): string {
  for (const pin of options.touch) {
    if (/^\d+$/.test(pin) && !options.rows.flat().includes(Number(pin))) {
      throw new RangeError(`${options.label} has no pin ${pin} to touch`)
    }
  }
  const body = options.shape === 'round' ? roundBody(options) : blockBody(options)
  const ground = flagsOn('ground', options.touch)
  const margin = (side: string) => edge + (options.latch === side ? latchDepth : 0)
  const left = body.halfWidth + margin('left')
  const right = body.halfWidth + margin('right') + (ground ? groundWidth : 0)
  const top = body.halfHeight + margin('top')
  const height = top + body.halfHeight + margin('bottom')
  // A small plug is not blown up to fill the page: it keeps the size of its cavities.
  const spare = Math.max(0, narrowest - left - right) / 2
  const view = [-left - spare, -top, left + right + 2 * spare, height]
  return [
    `<svg class="connector-face" role="img" viewBox="${view.map(short).join(' ')}"`,
    ' fill="none" stroke="currentColor" stroke-width="1.5" text-anchor="middle">',
    `<title>${escaped(titleOf(options))}</title>`,
    `<desc>${escaped(layoutOf(options))}</desc>`,
    drawLatch(options.latch, body),
    body.outline,
    ...body.spots.map((spot) => drawCavity(spot, body.size, options)),
    ground && drawGround(ground, right - groundWidth / 2),
    '</svg>',
  ].join('')
}

const narrowest = 320
const edge = 4
const latchDepth = 20
const groundWidth = 68
/** Room above each cavity for its flag. */
const flagHeight = 26
/** Between neighbours: a cavity with its heavy ring on either side. */
const gap = 10

interface Spot {
  readonly pin: number | null
  /** Middle of the cavity, from the middle of the body. */
  readonly x: number
  readonly y: number
}
interface Body {
  readonly halfWidth: number
  readonly halfHeight: number
  /** Width and height of a cavity. */
  readonly size: number
  readonly outline: string
  readonly spots: readonly Spot[]
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

function drawLatch(latch: FaceOptions['latch'], body: Body): string {
  if (latch === 'none') return ''
  const upright = latch === 'left' || latch === 'right'
  const turn = { top: 0, right: 90, bottom: 180, left: -90 }[latch]
  const out = upright ? body.halfWidth : body.halfHeight
  // Turned with the tab, its word would stand on its head at the bottom.
  const word = latch === 'bottom' ? 'transform="rotate(180 0 -9)"' : ''
  return `<g class="latch" transform="rotate(${turn}) translate(0 ${short(-out)})"><path d="M-34 0V-14q0-4 4-4H30q4 0 4 4V0" stroke-width="2.5"/>${text('latch', 0, -5, 12, word)}</g>`
}

function drawCavity({ pin, x, y }: Spot, size: number, options: FaceOptions): string {
  const at = `transform="translate(${short(x)} ${short(y)})"`
  const hole = options.shape === 'round' ? roundHole : squareHole
  if (pin === null) return `<g class="empty" ${at}>${hole(size - 8, 'stroke-dasharray="3 4"')}</g>`
  const letters = flagsOn(String(pin), options.touch)
  const wire = options.pins[pin]
  // Square cavities of full size have room for the colour code below the wire.
  const coded = options.shape === 'block' && size > 46
  return [
    `<g class="${letters ? 'touched cavity' : 'cavity'}" data-pin="${pin}" ${at}>`,
    hole(size, ''),
    letters && hole(size + 5, 'class="ring" stroke-width="4.5"') + drawFlag(letters, -size / 2 - 2),
    text(String(pin), 0, coded ? -6 : -1, size > 40 ? 17 : 15, 'font-weight="700"'),
    wire && drawWire(wire, size - (options.shape === 'round' ? 20 : 14), coded ? -3 : 4),
    wire && coded && text(wire.code, 0, 20, Math.min(12, 76 / wire.code.length)),
    '</g>',
  ]
    .filter(Boolean)
    .join('')
}

const squareHole = (size: number, more: string) =>
  `<rect ${box(-size / 2, -size / 2, size, size)} rx="7" ${more}/>`
const roundHole = (size: number, more: string) => `<circle r="${short(size / 2)}" ${more}/>`

/** Base colour as the insulation, tracers as the thin stripes printed along it. */
function drawWire({ swatches: [base, ...tracers] }: FaceWire, width: number, y: number): string {
  if (!base) return ''
  const thick = 10
  const stripe = thick / (2 * tracers.length + 1)
  const bar = (top: number, height: number, more: string) =>
    `<rect ${box(-width / 2, top, width, height)} ${more}/>`
  const filled = (name: string) => `class="${escaped(name)}" stroke="none"`
  return [
    bar(y, thick, filled(base)),
    ...tracers.map((tracer, i) => bar(y + (2 * i + 1) * stripe, stripe, filled(tracer))),
    // The outline keeps a black wire on a dark page, and a white one on paper, in sight.
    bar(y, thick, 'stroke-width="1"'),
  ].join('')
}

/** A flag on its pole, the foot of the pole at (0, y). */
function drawFlag(letters: string, y: number): string {
  const width = 14 + 10 * letters.length
  return `<g class="flag" transform="translate(${short(-width / 2)} ${short(y)})"><path d="M0 0V-23H${width}l-4 8.5 4 8.5H0" stroke-width="2"/>${text(letters, width / 2 - 1, -9, 15, 'font-weight="700"')}</g>`
}

/** Earth: a lead onto three bars, each shorter than the one above. */
function drawGround(letters: string, x: number): string {
  return [
    `<g class="ground" transform="translate(${short(x)} 0)">`,
    '<path d="M0-14V6M-20 6H20M-12 13H12M-5 20H5" stroke-width="3"/>',
    drawFlag(letters, -14),
    text('ground', 0, 40, 13),
    '</g>',
  ].join('')
}

function titleOf({ label, touch, pins }: FaceOptions): string {
  const probes = touch.map((at, i) => {
    const place = /^\d+$/.test(at) ? `pin ${at}` : at
    return `probe ${letterOf(i)} on ${place}${pins[at] ? ` (${pins[at].name})` : ''}`
  })
  return [label, probes.join(', ')].filter(Boolean).join(': ')
}

function layoutOf({ rows, shape, latch }: FaceOptions): string {
  const lengths = rows.map((row) => row.length)
  const [first] = lengths
  const alike = lengths.every((length) => length === first)
  const pins = alike ? `${first}` : lengths.join(' and ')
  const lines = shape === 'round' ? ['circle', 'circles'] : ['row', 'rows']
  const layout =
    lengths.length === 1
      ? `1 ${lines[0]} of ${pins}`
      : `${lengths.length} ${lines[1]} of ${pins}${shape === 'round' ? ', outermost first' : ''}`
  return `${layout}; ${latch === 'none' ? 'no latch' : `latch at the ${latch}`}.`
}

const letterOf = (index: number) => String.fromCharCode('A'.charCodeAt(0) + index)

const flagsOn = (place: string, touch: readonly string[]) =>
  touch.map((at, i) => (at === place ? letterOf(i) : '')).join('')

const text = (words: string, x: number, y: number, size: number, more = '') =>
  `<text x="${short(x)}" y="${short(y)}" font-size="${short(size)}" fill="currentColor" stroke="none" ${more}>${escaped(words)}</text>`

const box = (x: number, y: number, width: number, height: number) =>
  `x="${short(x)}" y="${short(y)}" width="${short(width)}" height="${short(height)}"`

const short = (length: number) => String(Math.round(length * 10) / 10 || 0)
