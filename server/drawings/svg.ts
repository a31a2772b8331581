import { escaped } from './xml.ts'

/** Words in the colour of the drawing, their middle at (x, y) where the drawing says so. */
export const text = (words: string, x: number, y: number, size: number, more = '') =>
  `<text x="${short(x)}" y="${short(y)}" font-size="${short(size)}" fill="currentColor" stroke="none" ${more}>${escaped(words)}</text>`

/** The attributes of a rectangle. */
export const box = (x: number, y: number, width: number, height: number) =>
  `x="${short(x)}" y="${short(y)}" width="${short(width)}" height="${short(height)}"`

/** A length to a tenth of a unit, which no eye sees. */
export const short = (length: number) => String(Math.round(length * 10) / 10 || 0)
