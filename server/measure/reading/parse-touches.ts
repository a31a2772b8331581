import { parseReading } from './parse.ts'
import type { Quantity } from './quantity.ts'
import type { Touches } from './reading.ts'
import { refusals } from './refusals.ts'

export type ParsedTouches =
  | { readonly ok: true; readonly touches: Touches }
  | { readonly ok: false; readonly problem: string }

/** More touches than anybody makes at one pin. */
const most = 12

/**
 * Reads one touch of the probes or several: `52.5`, `52.7 58.1 52.5`, `52.7; OL; 52,5`, `4.7 kΩ 4.8 kΩ`.
 *
 * What can be read as one reading is one (`4.7 kΩ`, `0, 27`); otherwise the text is cut at semicolons,
 * line ends, strokes and the word "and", or else at spaces, a lone unit going with the number before it.
 * `1 250` could be one reading or two, and is asked again. Never throws.
 */
export function parseTouches(typed: string, quantity: Quantity): ParsedTouches {
  if (areDigitGroups(typed)) return { ok: false, problem: refusals.groups(quantity, typed.trim()) }
  const one = parseReading(typed, quantity)
  if (one.ok) return { ok: true, touches: [one.reading] }
  const pieces = piecesOf(typed)
  if (pieces.length < 2 || typed.length > 200) return one
  if (pieces.length > most) {
    const { many, trouble } = quantity.touches
    const best = trouble === 'adds' ? 'lowest' : 'highest'
    return { ok: false, problem: `Enter at most ${most} ${many}; the ${best} ones tell most.` }
  }
  const parsed = pieces.map((piece) => parseReading(piece, quantity))
  const wrong = parsed.find((each) => !each.ok)
  const [first, ...more] = parsed.flatMap((each) => (each.ok ? [each.reading] : []))
  // Two words that are no numbers are not two touches: say what is wrong with the whole.
  if (first === undefined) return one
  const word = pieces.find((piece) => !/\d/.test(piece) && !parseReading(piece, quantity).ok)
  if (word !== undefined) return { ok: false, problem: refusals.word(quantity, word) }
  if (wrong && !wrong.ok) return wrong
  return { ok: true, touches: [first, ...more] }
}

/** Three digits at a time: `1 250` is a thousand to one, two touches to another. */
const digitGroups = /^[1-9]\d{0,2}([ \u00a0\u202f'’]\d{3})+(?=\s*[a-zA-Z\u03a9\u2126]*$)/

/** Touches of one pin do not lie so far apart; those that lie near each other are touches. */
const farApart = 4

function areDigitGroups(typed: string): boolean {
  if (!digitGroups.test(typed.trim())) return false
  const groups = (typed.match(/\d+/g) ?? []).map(Number)
  return Math.max(...groups) > farApart * Math.min(...groups)
}

function piecesOf(typed: string): string[] {
  const strong = typed.split(/[;\n|/+&]+|\band\b/i)
  const words = strong.length > 1 ? strong : typed.trim().split(/[\s\u00a0]+|,\s+/)
  const pieces: string[] = []
  for (const word of words.map((each) => each.trim()).filter(Boolean)) {
    const last = pieces.length - 1
    if (last >= 0 && isUnit(word)) pieces[last] += ` ${word}`
    else pieces.push(word)
  }
  return pieces
}

/** A word of letters only that is no OL belongs to the number before it. */
function isUnit(word: string): boolean {
  return /^[a-zA-Z\u03a9\u2126°º″”"]+$/.test(word) && !/^(ol|over|open|inf)$/i.test(word)
}
