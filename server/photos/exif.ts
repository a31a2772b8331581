import { viewOf } from './picture.ts'

/** How a picture is to be turned to stand upright, 1 to 8 as TIFF 6.0 has it; 1 is as it is. */
export type Orientation = number

const tag = 0x0112
const short = 3

/** The orientation in a TIFF structure, as Exif keeps it; 1 where it says none that there is. */
export function orientationIn(tiff: Uint8Array): Orientation {
  if (tiff.length < 14) return 1
  const view = viewOf(tiff)
  const order = view.getUint16(0)
  if (order !== 0x4949 && order !== 0x4d4d) return 1
  const little = order === 0x4949
  const first = view.getUint32(4, little)
  if (first + 2 > tiff.length) return 1
  const entries = view.getUint16(first, little)
  for (let i = 0, at = first + 2; i < entries && at + 12 <= tiff.length; i += 1, at += 12) {
    if (view.getUint16(at, little) !== tag || view.getUint16(at + 2, little) !== short) continue
    const value = view.getUint16(at + 8, little)
    return value >= 1 && value <= 8 ? value : 1
  }
  return 1
}

/** A TIFF structure that says how to turn a picture and nothing else. */
export function tiffOf(orientation: Orientation): Uint8Array {
  const tiff = new Uint8Array(26)
  const view = viewOf(tiff)
  view.setUint32(0, 0x4d4d002a)
  view.setUint32(4, 8)
  view.setUint16(8, 1)
  view.setUint16(10, tag)
  view.setUint16(12, short)
  view.setUint32(14, 1)
  view.setUint16(18, orientation)
  return tiff
}
