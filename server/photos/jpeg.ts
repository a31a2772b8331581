import { type Orientation, orientationIn, tiffOf } from './exif.ts'
import { bytesOf, lettersAt, mostPieces, type NoPicture, type Picture, viewOf } from './picture.ts'

/** Markers of ITU-T T.81, table B.1, by their second byte. */
const soi = 0xd8
const eoi = 0xd9
const sos = 0xda
const app1 = 0xe1

/** Without these it cannot be drawn: frame, tables, restarts, lines. */
const isDrawn = (marker: number): boolean => isFrame(marker) || drawn.has(marker)
const drawn: ReadonlySet<number> = new Set([0xc4, 0xcc, 0xdb, 0xdc, 0xdd, sos])
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)

/** A JPEG with its picture, its colours and its orientation only, segment by segment (ITU-T T.81, annex B). */
export function cleanJpeg(bytes: Uint8Array): Picture | NoPicture {
  const view = viewOf(bytes)
  const kept: Uint8Array[] = []
  let size: Pick<Picture, 'width' | 'height'> | undefined
  let orientation: Orientation = 1
  let scans = 0
  for (let at = 2, pieces = 0; ; pieces += 1) {
    if (pieces > mostPieces) return 'damaged'
    if (at + 2 > bytes.length) return 'cut short'
    const marker = bytes[at + 1] ?? 0
    if (bytes[at] !== 0xff) return 'damaged'
    if (marker === eoi) {
      return size && scans > 0 ? { ...size, ...written(kept, orientation) } : 'damaged'
    }
    // These may stand before a marker.
    if (marker === 0xff) {
      at += 1
      continue
    }
    if (marker < 0xc0 || (marker >= 0xd0 && marker <= soi)) return 'damaged'
    if (at + 4 > bytes.length) return 'cut short'
    let end = at + 2 + view.getUint16(at + 2)
    if (end < at + 4) return 'damaged'
    if (marker === sos) {
      scans += 1
      end = endOfScan(bytes, end)
    }
    if (end > bytes.length) return 'cut short'
    const segment = bytes.subarray(at, end)
    if (isFrame(marker)) {
      if (size || segment.length < 10) return 'damaged'
      size = { height: view.getUint16(at + 5), width: view.getUint16(at + 7) }
    }
    if (marker === app1 && lettersAt(segment, 4, 6) === 'Exif\0\0') {
      orientation = orientationIn(segment.subarray(10))
    }
    kept.push(...keptOf(marker, segment))
    at = end
  }
}

/** Where the next marker stands; beyond the end where there is none. A zero byte or a restart is no end. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at !== -1; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1]
    if (next === undefined) break
    if (next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at
  }
  return bytes.length + 1
}

function keptOf(marker: number, segment: Uint8Array): Uint8Array[] {
  if (isDrawn(marker)) return [segment]
  const is = (name: string) => lettersAt(segment, 4, name.length) === name
  // JFIF may hold a smaller copy of the picture, which stays behind: its last two bytes are its size.
  if (marker === 0xe0 && is('JFIF\0') && segment.length >= 18) return [jfif(segment)]
  if (marker === 0xe2 && is('ICC_PROFILE\0')) return [segment]
  return marker === 0xee && is('Adobe') ? [segment] : []
}

function jfif(segment: Uint8Array): Uint8Array {
  const head = segment.slice(0, 18)
  head.set([0, 16], 2)
  head.set([0, 0], 16)
  return head
}

function written(
  kept: readonly Uint8Array[],
  orientation: Orientation,
): Pick<Picture, 'type' | 'bytes'> {
  const turned = orientation === 1 ? [] : [exif(orientation)]
  const parts = [Uint8Array.of(0xff, soi), ...turned, ...kept, Uint8Array.of(0xff, eoi)]
  return { type: 'image/jpeg', bytes: new Uint8Array(Buffer.concat(parts)) }
}

function exif(orientation: Orientation): Uint8Array {
  const body = Buffer.concat([bytesOf('Exif\0\0'), tiffOf(orientation)])
  return Buffer.concat([Uint8Array.of(0xff, app1, 0, body.length + 2), body])
}
