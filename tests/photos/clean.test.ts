import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cleaned, longestSide } from '../../server/photos/clean.ts'
import { orientationIn } from '../../server/photos/exif.ts'
import { mostPieces, type Picture } from '../../server/photos/picture.ts'
import {
  plainJpeg,
  plainWebps,
  png,
  pngChunk,
  secrets,
  tellingJpeg,
  tellingPng,
  tellingWebp,
  tiffWith,
  webpChunk,
} from '../support/pictures.ts'

const picture = (bytes: Uint8Array): Picture => {
  const it = cleaned(bytes)
  if (typeof it === 'string') throw new Error(it)
  return it
}

/** A JPEG with so many empty comments. */
const jpegOf = (comments: number): Buffer =>
  Buffer.concat([
    plainJpeg.subarray(0, 2),
    ...Array(comments).fill(Buffer.from([0xff, 0xfe, 0, 2])),
    plainJpeg.subarray(2),
  ])

const telling = [
  ['JPEG', 'image/jpeg', tellingJpeg],
  ['PNG', 'image/png', tellingPng],
  ['WebP', 'image/webp', tellingWebp],
] as const

describe.each(telling)('a %s', (_, type, made) => {
  it('is kept without anything that says where, when or by whom it was taken', () => {
    const before = made()
    const told = secrets.filter((secret) => before.includes(secret, 0, 'latin1'))
    expect(told.length).toBeGreaterThan(3)
    const { bytes, ...about } = picture(before)
    expect(about).toEqual({ type, width: 3, height: 2 })
    const after = Buffer.from(bytes)
    expect(secrets.filter((secret) => after.includes(secret, 0, 'latin1'))).toEqual([])
  })

  it('keeps how it is to be turned, and nothing where it stands upright', () => {
    const turned = Buffer.from(picture(made(6)).bytes)
    const tiff = turned.indexOf('MM\0*', 0, 'latin1')
    expect(orientationIn(turned.subarray(tiff, tiff + 26))).toBe(6)
    expect(Buffer.from(picture(made(1)).bytes).indexOf('MM\0*', 0, 'latin1')).toBe(-1)
  })

  it('once cleaned is not changed by being cleaned again', () => {
    const { bytes } = picture(made())
    expect(Buffer.compare(picture(bytes).bytes, bytes)).toBe(0)
  })

  it('cut off anywhere before its end is refused', () => {
    const { bytes } = picture(made())
    for (let length = 0; length < bytes.length; length += 1) {
      expect(cleaned(bytes.subarray(0, length)), String(length)).toEqual(expect.any(String))
    }
  })

  it('with bytes changed anywhere is refused or cleaned, and never more than that', () => {
    const before = made()
    const change = fc.record({ at: fc.nat(before.length - 1), to: fc.nat(255) })
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), (changes) => {
        const bytes = Uint8Array.from(before)
        for (const { at, to } of changes) bytes[at] = to
        const it = cleaned(bytes)
        if (typeof it !== 'string') expect(it.bytes.length).toBeLessThanOrEqual(before.length + 40)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('what is drawn', () => {
  it('stays as it was, byte for byte', () => {
    expect(Buffer.from(picture(plainJpeg).bytes).equals(plainJpeg)).toBe(true)
    expect(Buffer.from(picture(png(3, 2)).bytes).equals(png(3, 2))).toBe(true)
    for (const webp of plainWebps) {
      expect(picture(webp)).toMatchObject({ width: 3, height: 2 })
      expect(Buffer.from(picture(webp).bytes).equals(webp)).toBe(true)
    }
    const profile = Buffer.from('a profile')
    expect(Buffer.from(picture(tellingWebp()).bytes).includes(profile)).toBe(true)
  })
})

describe('refuses', () => {
  const svg = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'
  const animation = pngChunk('acTL', Buffer.alloc(8))
  it.each([
    ['nothing', Buffer.alloc(0), 'empty'],
    ['a drawing that can hold scripts', Buffer.from(svg), 'of no kind'],
    ['a page', Buffer.from('<!doctype html><script>alert(1)</script>'), 'of no kind'],
    ['another kind of picture', Buffer.from('GIF89a\x01\0\x01\0'), 'of no kind'],
    ['a phone’s own kind', Buffer.from('\0\0\0\x18ftypheic'), 'of no kind'],
    ['a page that begins as a JPEG', Buffer.from('\xff\xd8\xff<script>', 'latin1'), 'damaged'],
    ['the head of a PNG alone', png(3, 2).subarray(0, 33), 'cut short'],
    [
      'a PNG without a picture',
      Buffer.concat([png(3, 2).subarray(0, 33), pngChunk('IEND', Buffer.alloc(0))]),
      'damaged',
    ],
    ['a PNG of no size', png(0, 2), 'damaged'],
    ['a PNG as wide as a field', png(longestSide + 1, 1), 'too many points'],
    ['a PNG of a thousand million points', png(16_000, 16_000), 'too many points'],
    [
      'a PNG with a part that nobody knows',
      png(3, 2, [pngChunk('EVIL', Buffer.alloc(1))]),
      'damaged',
    ],
    ['a WebP that moves', tellingWebp(1, [webpChunk('ANIM', Buffer.alloc(6))]), 'moving'],
  ])('%s', (_, bytes, why) => {
    expect(cleaned(bytes)).toBe(why)
  })

  it.each([
    ['JPEG', (pieces: number) => jpegOf(pieces)],
    ['PNG', (pieces: number) => png(3, 2, Array(pieces).fill(pngChunk('tEXt', Buffer.alloc(0))))],
    [
      'WebP',
      (pieces: number) => tellingWebp(1, Array(pieces).fill(webpChunk('none', Buffer.alloc(0)))),
    ],
  ])('a %s in more pieces than any writer makes of it', (_, madeOf) => {
    picture(madeOf(mostPieces - 20))
    expect(cleaned(madeOf(mostPieces + 1))).toBe('damaged')
  })

  it('but of a PNG that moves takes the first picture', () => {
    expect(picture(png(3, 2, [animation])).bytes.length).toBe(png(3, 2).length)
  })

  it('a WebP whose head promises another size than it draws', () => {
    const lying = tellingWebp()
    lying[lying.indexOf('VP8X') + 12] = 200
    expect(cleaned(lying)).toBe('damaged')
  })
})

describe('an orientation', () => {
  it.each([1, 3, 6, 8])('of %i is read as it was written', (orientation) => {
    expect(orientationIn(tiffWith(orientation))).toBe(orientation)
  })

  it.each([
    ['0', tiffWith(0)],
    ['9', tiffWith(9)],
    ['nothing', Buffer.alloc(0)],
    ['a place beyond the end', Buffer.from('II*\0\xff\xff\xff\x7f\0\0\0\0\0\0', 'latin1')],
  ])('of %s is none', (_, tiff) => {
    expect(orientationIn(tiff)).toBe(1)
  })
})
