import { type Orientation, orientationIn, tiffOf } from './exif.ts'
import { bytesOf, lettersAt, mostPieces, type NoPicture, type Picture, viewOf } from './picture.ts'

export const isWebp = (bytes: Uint8Array): boolean =>
  lettersAt(bytes, 0) === 'RIFF' && lettersAt(bytes, 8) === 'WEBP'

type Size = Pick<Picture, 'width' | 'height'>

/** Bits of the first byte of VP8X: what else the file holds. */
const flags = { profile: 0x20, alpha: 0x10, exif: 0x08 }

/** Without these it cannot be drawn as it was meant. */
const drawn: ReadonlySet<string> = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ICCP'])

/** A WebP with its picture, its colours and its orientation only, chunk by chunk (RFC 9649). */
export function cleanWebp(bytes: Uint8Array): Picture | NoPicture {
  if (bytes.length < 12) return 'cut short'
  const whole = 8 + viewOf(bytes).getUint32(4, true)
  if (whole > bytes.length) return 'cut short'
  const chunks = chunksOf(bytes.subarray(12, whole))
  if (typeof chunks === 'string') return chunks
  const named = (name: string) => chunks.filter((chunk) => lettersAt(chunk, 0) === name)
  if (named('ANIM').length + named('ANMF').length > 0) return 'moving'
  const [image, ...more] = [...named('VP8 '), ...named('VP8L')]
  const size = image && sizeOf(image)
  if (size === undefined || more.length > 0) return 'damaged'
  const [canvas] = named('VP8X')
  if (canvas && !fits(size, canvas)) return 'damaged'
  const [exif] = named('EXIF')
  const orientation = exif ? orientationIn(tiffIn(exif.subarray(8))) : 1
  const kept = chunks.filter((chunk) => drawn.has(lettersAt(chunk, 0)))
  return { ...size, type: 'image/webp', bytes: written(kept, canvas ? orientation : 1) }
}

/** Each with its head and its padding. */
function chunksOf(body: Uint8Array): Uint8Array[] | 'cut short' | 'damaged' {
  const chunks: Uint8Array[] = []
  for (let at = 0; at < body.length; ) {
    if (at + 8 > body.length) return 'cut short'
    const size = viewOf(body).getUint32(at + 4, true)
    const end = at + 8 + size + (size % 2)
    if (end > body.length) return 'cut short'
    if (chunks.length > mostPieces) return 'damaged'
    chunks.push(body.subarray(at, end))
    at = end
  }
  return chunks
}

/** Of a lossy picture as its key frame says (RFC 6386, 9.1), of a lossless one as its head does. */
function sizeOf(chunk: Uint8Array): Size | undefined {
  const view = viewOf(chunk)
  const isVp8l = lettersAt(chunk, 0) === 'VP8L'
  if (chunk.length < (isVp8l ? 13 : 18)) return undefined
  if (isVp8l) {
    const bits = view.getUint32(9, true)
    const isLossless = chunk[8] === 0x2f
    return isLossless
      ? { width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 }
      : undefined
  }
  const isKeyFrame = ((chunk[8] ?? 1) & 1) === 0 && lettersAt(chunk, 11, 3) === '\x9d\x01\x2a'
  return isKeyFrame
    ? { width: view.getUint16(14, true) & 0x3fff, height: view.getUint16(16, true) & 0x3fff }
    : undefined
}

/** A still picture fills its canvas, whose sides are three bytes each. */
function fits({ width, height }: Size, canvas: Uint8Array): boolean {
  const side = (at: number) =>
    1 + (canvas[at] ?? 0) + ((canvas[at + 1] ?? 0) << 8) + ((canvas[at + 2] ?? 0) << 16)
  return canvas.length === 18 && side(12) === width && side(15) === height
}

/** Some writers put the head in front that only JPEG asks for. */
const tiffIn = (exif: Uint8Array): Uint8Array =>
  lettersAt(exif, 0, 6) === 'Exif\0\0' ? exif.subarray(6) : exif

function written(kept: readonly Uint8Array[], orientation: Orientation): Uint8Array {
  const isTurned = orientation !== 1
  const chunks = kept.map((chunk) =>
    lettersAt(chunk, 0) === 'VP8X' ? canvasOf(chunk, isTurned) : chunk,
  )
  const exif = isTurned ? [Buffer.concat([head('EXIF', 26), tiffOf(orientation)])] : []
  const body = Buffer.concat([bytesOf('WEBP'), ...chunks, ...exif])
  return new Uint8Array(Buffer.concat([head('RIFF', body.length), body]))
}

/** It says of the file only what is still in it. */
function canvasOf(chunk: Uint8Array, isTurned: boolean): Uint8Array {
  const canvas = chunk.slice()
  canvas[8] = ((chunk[8] ?? 0) & (flags.profile | flags.alpha)) | (isTurned ? flags.exif : 0)
  return canvas
}

function head(name: string, size: number): Uint8Array {
  const made = new Uint8Array(8)
  made.set(bytesOf(name))
  viewOf(made).setUint32(4, size, true)
  return made
}
