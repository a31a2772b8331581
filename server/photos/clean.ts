import { cleanJpeg } from './jpeg.ts'
import type { NoPicture, Picture } from './picture.ts'
import { cleanPng, isPng } from './png.ts'
import { cleanWebp, isWebp } from './webp.ts'

/** As much as a good phone makes in one picture; a browser needs four bytes for each point of it. */
export const mostPoints = 64e6
/** No browser draws more to one side. */
export const longestSide = 16_384

/**
 * The picture in these bytes and nothing else that was in them: no place, time, camera, name, comment,
 * smaller copy, nor anything after its end. What it is shows in the bytes; no name or type is asked.
 */
export function cleaned(bytes: Uint8Array): Picture | NoPicture {
  if (bytes.length === 0) return 'empty'
  const picture = read(bytes)
  if (typeof picture === 'string') return picture
  const { width, height } = picture
  if (width < 1 || height < 1) return 'damaged'
  const isHuge = Math.max(width, height) > longestSide || width * height > mostPoints
  return isHuge ? 'too many points' : picture
}

function read(bytes: Uint8Array): Picture | NoPicture {
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return cleanJpeg(bytes)
  if (isPng(bytes)) return cleanPng(bytes)
  return isWebp(bytes) ? cleanWebp(bytes) : 'of no kind'
}
