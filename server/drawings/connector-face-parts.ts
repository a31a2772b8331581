import type { Body, Spot } from './connector-face-layout.ts'
import { type FaceOptions, type FaceWire, flagsOn } from './connector-face-options.ts'
import { box, short, text } from './svg.ts'
import { escaped } from './xml.ts'

export function drawLatch(latch: FaceOptions['latch'], body: Body): string {
  if (latch === 'none') return ''
  const upright = latch === 'left' || latch === 'right'
  const turn = { top: 0, right: 90, bottom: 180, left: -90 }[latch]
  const out = upright ? body.halfWidth : body.halfHeight
  // Turned with the tab, its word would stand on its head at the bottom.
  const word = latch === 'bottom' ? 'transform="rotate(180 0 -9)"' : ''
  return `<g class="latch" transform="rotate(${turn}) translate(0 ${short(-out)})"><path d="M-34 0V-14q0-4 4-4H30q4 0 4 4V0" stroke-width="2.5"/>${text('latch', 0, -5, 12, word)}</g>`
}

export function drawCavity({ pin, x, y }: Spot, size: number, options: FaceOptions): string {
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
export function drawGround(letters: string, x: number): string {
  return [
    `<g class="ground" transform="translate(${short(x)} 0)">`,
    '<path d="M0-14V6M-20 6H20M-12 13H12M-5 20H5" stroke-width="3"/>',
    drawFlag(letters, -14),
    text('ground', 0, 40, 13),
    '</g>',
  ].join('')
}
