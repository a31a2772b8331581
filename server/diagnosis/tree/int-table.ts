/** Entries stand in rows of four: the triple and its number, next to each other in memory. */
const ROW = 4
const NOTHING = -1

/**
 * Numbers by triples of numbers, all 0 to 2^31 − 1, in one flat array with open addressing: a `Map`
 * takes several times the memory, and ends at 2^24 entries.
 */
export class IntTable {
  #rows = emptyRows(256)
  #size = 0

  get(a: number, b: number, c: number): number | undefined {
    const value = this.#rows[this.#placeOf(a, b, c) + 3]!
    return value === NOTHING ? undefined : value
  }

  /** For a triple that has no number yet. */
  set(a: number, b: number, c: number, value: number): void {
    // Beyond two thirds, taken places stand in long rows.
    if (this.#size * 3 * ROW >= this.#rows.length * 2) this.#grow()
    this.#put(a, b, c, value)
    this.#size += 1
  }

  #put(a: number, b: number, c: number, value: number): void {
    const place = this.#placeOf(a, b, c)
    this.#rows[place] = a
    this.#rows[place + 1] = b
    this.#rows[place + 2] = c
    this.#rows[place + 3] = value
  }

  /** Where the triple stands, or the free place where it would. */
  #placeOf(a: number, b: number, c: number): number {
    const rows = this.#rows
    const last = rows.length / ROW - 1
    let row = mixed(a, b, c) & last
    for (;;) {
      const place = row * ROW
      if (rows[place + 3] === NOTHING) return place
      if (rows[place] === a && rows[place + 1] === b && rows[place + 2] === c) return place
      row = (row + 1) & last
    }
  }

  #grow(): void {
    const before = this.#rows
    this.#rows = emptyRows((before.length / ROW) * 2)
    for (let place = 0; place < before.length; place += ROW) {
      const value = before[place + 3]!
      if (value === NOTHING) continue
      this.#put(before[place]!, before[place + 1]!, before[place + 2]!, value)
    }
  }
}

function emptyRows(count: number): Int32Array {
  return new Int32Array(count * ROW).fill(NOTHING)
}

/** All bits of the three in one number (after the finishing step of MurmurHash3, public domain). */
function mixed(a: number, b: number, c: number): number {
  let h = Math.imul(a, 0x9e3779b1) ^ Math.imul(b, 0x85ebca6b) ^ Math.imul(c, 0xc2b2ae35)
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d)
  h = Math.imul(h ^ (h >>> 13), 0x297a2d39)
  return h ^ (h >>> 16)
}
