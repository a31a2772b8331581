import { deflateSync } from 'node:zlib'
import { crc32 } from '../../server/photos/crc.ts'

/** Three points by two, as a browser wrote it. */
export const plainJpeg: Buffer = Buffer.from(
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDABALDA4MChAODQ4SERATGCgaGBYWGDEjJR0oOjM9PDkzODdASFxO' +
    'QERXRTc4UG1RV19iZ2hnPk1xeXBkeFxlZ2P/2wBDARESEhgVGC8aGi9jQjhCY2NjY2NjY2NjY2NjY2NjY2Nj' +
    'Y2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2P/wAARCAACAAMDASIAAhEBAxEB/8QAFQABAQAAAAAA' +
    'AAAAAAAAAAAAAAX/xAAUEAEAAAAAAAAAAAAAAAAAAAAA/8QAFQEBAQAAAAAAAAAAAAAAAAAABAX/xAAUEQEA' +
    'AAAAAAAAAAAAAAAAAAAA/9oADAMBAAIRAxEAPwCUAMuP/9k=',
  'base64',
)

/** The same as one chunk of a WebP, lossy and lossless. */
const lossy = Buffer.from(
  'VlA4ICgAAABwAQCdASoDAAIAAsBMJaACdAFAAAD+7HDdcXNkYa/+N4/yXf277KAA',
  'base64',
)
const lossless = Buffer.from('VlA4TA0AAAAvAkAAEAcQERGIiP4HAAA=', 'base64').subarray(0, 22)

/** What tells where and by whom a picture was taken; no cleaned one may hold any of it. */
export const secrets = [
  'GPS-52.5163N',
  'Ada Lovelace',
  'home address',
  'xap/1.0',
  'II*',
  '<script>',
]

/** A TIFF structure with a position, a name and an orientation, as phones write it. */
export function tiffWith(orientation: number): Buffer {
  const head = Buffer.from('II*\0\x08\0\0\0', 'latin1')
  const entry = (tag: number, type: number, count: number, value: number) => {
    const made = Buffer.alloc(12)
    made.writeUInt16LE(tag, 0)
    made.writeUInt16LE(type, 2)
    made.writeUInt32LE(count, 4)
    if (type === 3) made.writeUInt16LE(value, 8)
    else made.writeUInt32LE(value, 8)
    return made
  }
  const entries = [
    entry(0x0112, 3, 1, orientation),
    entry(0x013b, 2, 13, 38),
    entry(0x8825, 4, 1, 51),
  ]
  const count = Buffer.from([entries.length, 0])
  const next = Buffer.alloc(4)
  const text = Buffer.from('Ada Lovelace\0GPS-52.5163N\0', 'latin1')
  return Buffer.concat([head, count, ...entries, next, text])
}

const segment = (marker: number, body: Buffer) => {
  const head = Buffer.from([0xff, marker, 0, 0])
  head.writeUInt16BE(body.length + 2, 2)
  return Buffer.concat([head, body])
}

/** A JPEG with everything in it that gives somebody away, and more after its end. */
export function tellingJpeg(orientation = 6): Buffer {
  const [start, rest] = [plainJpeg.subarray(0, 2), plainJpeg.subarray(2)]
  return Buffer.concat([
    start,
    segment(0xe1, Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiffWith(orientation)])),
    segment(0xe1, Buffer.from('http://ns.adobe.com/xap/1.0/\0GPS-52.5163N', 'latin1')),
    segment(0xed, Buffer.from('Photoshop 3.0\0home address', 'latin1')),
    segment(0xe2, Buffer.from('MPF\0GPS-52.5163N', 'latin1')),
    segment(0xfe, Buffer.from('Ada Lovelace', 'latin1')),
    rest,
    Buffer.from('<script>alert(1)</script>GPS-52.5163N'),
  ])
}

export function pngChunk(name: string, data: Buffer): Buffer {
  const made = Buffer.alloc(12 + data.length)
  made.writeUInt32BE(data.length, 0)
  made.write(name, 4, 'latin1')
  data.copy(made, 8)
  made.writeUInt32BE(crc32(made.subarray(4, 8 + data.length)), 8 + data.length)
  return made
}

/** A grey PNG of that size, with these chunks after its head. */
export function png(width: number, height: number, more: readonly Buffer[] = []): Buffer {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head[8] = 8
  const rows = deflateSync(Buffer.alloc(Math.min((width + 1) * height, 1e6), 0))
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    pngChunk('IHDR', head),
    ...more,
    pngChunk('IDAT', rows),
    pngChunk('IEND', Buffer.alloc(0)),
  ])
}

export function tellingPng(orientation = 6): Buffer {
  const text = (name: string) => pngChunk(name, Buffer.from('Comment\0Ada Lovelace GPS-52.5163N'))
  return Buffer.concat([
    png(3, 2, [pngChunk('eXIf', tiffWith(orientation)), text('tEXt'), text('iTXt'), text('zTXt')]),
    Buffer.from('<script>alert(1)</script>'),
  ])
}

export const webpChunk = (name: string, data: Buffer): Buffer => {
  const head = Buffer.alloc(8)
  head.write(name, 0, 'latin1')
  head.writeUInt32LE(data.length, 4)
  return Buffer.concat([head, data, Buffer.alloc(data.length % 2)])
}

const riff = (...chunks: readonly Buffer[]): Buffer => {
  const body = Buffer.concat([Buffer.from('WEBP'), ...chunks])
  const head = Buffer.alloc(8)
  head.write('RIFF', 0, 'latin1')
  head.writeUInt32LE(body.length, 4)
  return Buffer.concat([head, body])
}

export const plainWebps: readonly Buffer[] = [riff(lossy), riff(lossless)]

/** An extended WebP: its head says that there are Exif and XMP, and these tell. */
export function tellingWebp(orientation = 6, more: readonly Buffer[] = []): Buffer {
  const canvas = Buffer.from([0x2c, 0, 0, 0, 2, 0, 0, 1, 0, 0])
  return Buffer.concat([
    riff(
      webpChunk('VP8X', canvas),
      webpChunk('ICCP', Buffer.from('a profile')),
      ...more,
      lossy,
      webpChunk('EXIF', tiffWith(orientation)),
      webpChunk('XMP ', Buffer.from('GPS-52.5163N, home address')),
    ),
    Buffer.from('<script>alert(1)</script>'),
  ])
}
