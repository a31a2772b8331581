import { escaped } from './xml.ts'

/** What is drawn on one scale. Values in one unit; labels are finished words and figures. */
export interface LimitsScale {
  /** Told apart from other scales on the page by this. */
  readonly id: string
  readonly limits: { readonly low?: number; readonly high?: number; readonly label: string }
  /** As the meter showed it; `OL` lies beyond the right end. */
  readonly read: { readonly at: number | 'OL'; readonly label: string }
  /** As compared with the limits, and the half-width that holds the true value with 95 %. */
  readonly corrected?: { readonly at: number; readonly halfWidth: number; readonly label: string }
  readonly title: string
  /** The same in words. */
  readonly says: string
}

/**
 * Limits, reading and corrected reading on one line, as an SVG of our own: three rows, a hollow
 * triangle for the reading as read, a diamond on a bar for the corrected one, and the limits as a band
 * between two posts. Places are in per cent and the text is not scaled, so it stays legible at any width.
 */
export function limitsScale(scale: LimitsScale): string {
  const place = placing(scale)
  const { id, limits, read, corrected, title, says } = scale
  const [from, to] = [place(limits.low ?? -Infinity), place(limits.high ?? Infinity)]
  const names = `aria-labelledby="${escaped(id)}-title" aria-describedby="${escaped(id)}-says"`
  return [
    `<svg class="limits-scale" role="img" ${names} width="100%" height="${height}" focusable="false">`,
    `<title id="${escaped(id)}-title">${escaped(title)}</title>`,
    `<desc id="${escaped(id)}-says">${escaped(says)}</desc>`,
    ...[limits.low, limits.high]
      .filter((limit) => limit !== undefined)
      .map((limit) => line('guide', place(limit), 4, place(limit), rows.limits)),
    words('read', rows.read - 14, read.at === 'OL' ? 1 : place(read.at), read.label),
    read.at === 'OL' ? beyond() : shape('read', place(read.at), rows.read, 'M-7-7H7L0 6z'),
    ...(corrected ? bar(corrected, place) : []),
    line('axis', 0, rows.limits + 8, 1, rows.limits + 8),
    `<rect class="within" x="${percent(from)}" y="${rows.limits}" width="${percent(to - from)}" height="16"/>`,
    ...[limits.low, limits.high]
      .filter((limit) => limit !== undefined)
      .map((limit) => line('post', place(limit), rows.limits - 4, place(limit), rows.limits + 20)),
    words('limits', rows.limits + 36, (from + to) / 2, limits.label),
    '</svg>',
  ].join('')
}

/** Where each row stands, from the top, in CSS pixels. */
const rows = { read: 28, corrected: 76, limits: 98 }
const height = 140

/** Below this share of the line the limits would be a mere stroke: then the scale is logarithmic. */
const tooNarrow = 0.15

/** From a value to its place on the line, 0 to 1. What lies beyond the line is at its end. */
function placing({ limits, read, corrected }: LimitsScale): (value: number) => number {
  const marks = [
    ...(read.at === 'OL' ? [] : [read.at]),
    ...(corrected ? [-1, 0, 1].map((side) => corrected.at + side * corrected.halfWidth) : []),
  ]
  const linear = reach(limits, marks, 0)
  const width =
    (limits.high ?? limits.low ?? 0) - (limits.high === undefined ? 0 : (limits.low ?? 0))
  if (width >= tooNarrow * (linear.to - linear.from)) return along(linear)

  const least = Math.min(
    ...([limits.low, limits.high, ...marks].filter((value) => (value ?? 0) > 0) as number[]),
  )
  const log = (value: number) => Math.log10(Math.max(value, least / 2))
  const logLimits = {
    ...(limits.low && { low: log(limits.low) }),
    ...(limits.high && { high: log(limits.high) }),
  }
  const place = along(reach(logLimits, marks.map(log), Math.log10(least / 2)))
  return (value) => (value === -Infinity ? 0 : place(value === Infinity ? Infinity : log(value)))
}

interface Reach {
  readonly from: number
  readonly to: number
}

/** How far the line reaches: the limits with half their width to spare on each side, and every mark. */
function reach(
  { low, high }: { readonly low?: number; readonly high?: number },
  marks: readonly number[],
  bottom: number,
): Reach {
  const [left, right] = [low ?? bottom, high ?? low ?? bottom]
  const spare = low !== undefined && high !== undefined ? (high - low) / 2 : (right - bottom) / 2
  const [least, most] = [Math.min(left - spare, ...marks), Math.max(right + spare, ...marks)]
  const edge = 0.04 * (most - least)
  const from = Math.min(left - spare, least - edge)
  return {
    from: marks.every((mark) => mark >= bottom) ? Math.max(bottom, from) : from,
    to: Math.max(right + spare, most + edge),
  }
}

const along =
  ({ from, to }: Reach) =>
  (value: number) =>
    Math.min(1, Math.max(0, (value - from) / (to - from)))

function bar(
  { at, halfWidth, label }: NonNullable<LimitsScale['corrected']>,
  place: (value: number) => number,
): string[] {
  const [from, middle, to] = [place(at - halfWidth), place(at), place(at + halfWidth)]
  const y = rows.corrected
  return [
    words('corrected', y - 16, middle, label),
    line('doubt', from, y, to, y),
    line('doubt-end', from, y - 7, from, y + 7),
    line('doubt-end', to, y - 7, to, y + 7),
    shape('corrected', middle, y, 'M0-8L7 0 0 8-7 0z'),
  ]
}

const beyond = () => shape('read', 1, rows.read, 'M-16-7L-2 0-16 7z')

/** A figure is about this wide, and the narrowest line this long, in CSS pixels. */
const figure = 8.2
const narrowest = 250

/** A label above its mark, moved inward where it would stick out on a narrow screen. */
function words(kind: string, y: number, at: number, label: string): string {
  const half = (label.length * figure) / narrowest / 2
  const [x, anchor] = at < half ? [0, 'start'] : at > 1 - half ? [1, 'end'] : [at, 'middle']
  return `<text class="${kind}-label" x="${percent(x)}" y="${y}" text-anchor="${anchor}">${escaped(label)}</text>`
}

function line(kind: string, x1: number, y1: number, x2: number, y2: number): string {
  return `<line class="${kind}" x1="${percent(x1)}" y1="${y1}" x2="${percent(x2)}" y2="${y2}"/>`
}

/** A path cannot be placed in per cent; a drawing inside the drawing can. */
function shape(kind: string, x: number, y: number, path: string): string {
  return `<svg x="${percent(x)}" y="${y}" overflow="visible"><path class="${kind}-mark" d="${path}"/></svg>`
}

const percent = (share: number) => `${Number((share * 100).toFixed(2))}%`
