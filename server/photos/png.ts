import { crc32 } from './crc.ts'
import { type Orientation, orientationIn, tiffOf } from './exif.ts'
import { bytesOf, lettersAt, mostPieces, type NoPicture, type Picture, viewOf } from './picture.ts'

const signature = '\x89PNG\r\n\x1a\n'

/** What is drawn, and the colours that it is drawn in. */
const drawn: ReadonlySet<string> = new Set([
  ...['IHDR', 'PLTE', 'IDAT', 'IEND', 'tRNS'],
  ...['gAMA', 'cHRM', 'sRGB', 'iCCP', 'sBIT', 'cICP'],
])

export const isPng = (bytes: Uint8Array): boolean =>
  lettersAt(bytes, 0, signature.length) === signature

/**
 * A PNG with its picture, its colours and its orientation only, chunk by chunk (ISO/IEC 15948, 5.3). Of
 * one that moves the first picture is left, as where a browser cannot move it.
 */
export function cleanPng(bytes: Uint8Array): Picture | NoPicture {
  const view = viewOf(bytes)
  const kept: Uint8Array[] = []
  let orientation: Orientation = 1
  let hasData = false
  for (let at = signature.length, pieces = 0; ; pieces += 1) {
    if (pieces > mostPieces) return 'damaged'
    if (at + 12 > bytes.length) return 'cut short'
    const end = at + 12 + view.getUint32(at)
    if (end > bytes.length) return 'cut short'
    const name = lettersAt(bytes, at + 4)
    const isFirst = at === signature.length
    if (view.getUint32(end - 4) !== crc32(bytes.subarray(at + 4, end - 4))) return 'damaged'
    if (isFirst !== (name === 'IHDR') || (isFirst && end !== at + 25)) return 'damaged'
    // A chunk whose name begins with a capital letter has to be understood.
    if (!drawn.has(name) && !/^[a-z]/.test(name)) return 'damaged'
    if (name === 'eXIf') orientation = orientationIn(bytes.subarray(at + 8, end - 4))
    if (name === 'IDAT') hasData = true
    if (drawn.has(name)) kept.push(bytes.subarray(at, end))
    at = end
    if (name === 'IEND') break
  }
  const [head, ...others] = kept
  if (!hasData || head === undefined) return 'damaged'
  const turned = orientation === 1 ? [] : [chunk('eXIf', tiffOf(orientation))]
  return {
    type: 'image/png',
    bytes: new Uint8Array(Buffer.concat([bytesOf(signature), head, ...turned, ...others])),
    width: viewOf(head).getUint32(8),
    height: viewOf(head).getUint32(12),
  }
}

function chunk(name: string, data: Uint8Array): Uint8Array {
  const made = new Uint8Array(12 + data.length)
  viewOf(made).setUint32(0, data.length)
  made.set(bytesOf(name), 4)
  made.set(data, 8)
  viewOf(made).setUint32(8 + data.length, crc32(made.subarray(4, 8 + data.length)))
  return made
}
