/** A still picture with nothing in it but the picture. */
export interface Picture {
  readonly type: 'image/jpeg' | 'image/png' | 'image/webp'
  readonly bytes: Uint8Array
  /** In points, as it is kept: before it is turned upright. */
  readonly width: number
  readonly height: number
}

/** What keeps bytes from being one. */
export type NoPicture =
  | 'empty'
  | 'of no kind'
  | 'cut short'
  | 'damaged'
  | 'moving'
  | 'too many points'

/**
 * No writer cuts a picture into more pieces, of the eight megabytes that may come: reading a few million empty ones
 * would hold up everybody for seconds.
 */
export const mostPieces = 10_000

export const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)

/** The letters that stand at a place: "IHDR". Shorter at the end of the bytes. */
export const lettersAt = (bytes: Uint8Array, at: number, count = 4): string =>
  String.fromCharCode(...bytes.subarray(at, at + count))

export const bytesOf = (letters: string): Uint8Array =>
  Uint8Array.from(letters, (letter) => letter.charCodeAt(0))
