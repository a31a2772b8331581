/** One drawing of a kind of part: what it shows, in words, and its strokes inside a field of 120 by 90. */
export interface Picture {
  readonly title: string
  readonly strokes: readonly string[]
}

/** The outline of a thing. */
export const outline = (...paths: readonly string[]): string => path('outline', paths)

/** What is inside an outline, or lies before or behind it. */
export const detail = (...paths: readonly string[]): string => path('detail', paths)

/** Metal, or whatever else is solid: tinted, with an outline. */
export const solid = (...paths: readonly string[]): string => path('solid', paths)

/** What touches, and what one looks for: filled. */
export const filled = (...paths: readonly string[]): string => path('filled', paths)

/** A wire. */
export const wire = (...paths: readonly string[]): string => path('wire', paths)

const looks = {
  outline: 'fill="none" stroke-width="2.4"',
  detail: 'fill="none" stroke-width="1.2"',
  solid: 'fill="currentColor" fill-opacity="0.16" stroke-width="2.4"',
  filled: 'fill="currentColor" stroke-width="1.2"',
  wire: 'fill="none" stroke-width="3.4"',
} as const

const path = (look: keyof typeof looks, paths: readonly string[]) =>
  `<path ${looks[look]} d="${paths.join('')}"/>`

/** A rectangle as a path, with its corners rounded. */
export function block(x: number, y: number, width: number, height: number, round = 0): string {
  const r = Math.min(round, width / 2, height / 2)
  const arc = (dx: number, dy: number) => `a${r} ${r} 0 0 1 ${dx} ${dy}`
  return [
    `M${x + r} ${y}h${width - 2 * r}${arc(r, r)}v${height - 2 * r}${arc(-r, r)}`,
    `h${2 * r - width}${arc(-r, -r)}v${2 * r - height}${arc(r, -r)}z`,
  ].join('')
}

/** A circle as a path. */
export const ring = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 1 ${2 * r} 0a${r} ${r} 0 1 1 ${-2 * r} 0z`

/** A piece of a rim between two radii, from one angle to another, both in degrees clockwise from the top. */
export function rimPiece(
  [x, y]: readonly [number, number],
  [inner, outer]: readonly [number, number],
  from: number,
  to: number,
): string {
  const at = (r: number, degrees: number) => {
    const angle = (degrees * Math.PI) / 180
    return `${round(x + r * Math.sin(angle))} ${round(y - r * Math.cos(angle))}`
  }
  return [
    `M${at(outer, from)}A${outer} ${outer} 0 0 1 ${at(outer, to)}`,
    `L${at(inner, to)}A${inner} ${inner} 0 0 0 ${at(inner, from)}z`,
  ].join('')
}

const round = (length: number) => Math.round(length * 10) / 10

/** The same strokes several times, each a step further. */
export const rows = (count: number, stroke: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => stroke(i)).join('')
