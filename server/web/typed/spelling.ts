/** The words of a text as they are compared: small letters without accents, and figures. */
export function plainWords(text: string): string[] {
  const plain = text.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase()
  return plain.match(/[\p{L}\p{N}]+/gu) ?? []
}

/** The same as one text, for what is kept to be searched. */
export const plainText = (text: string): string => plainWords(text).join(' ')

/**
 * How well what was typed fits a word: 0 where the word begins with it, else how many slips of the
 * finger it is away from the word's beginning; null where that is more than anybody makes.
 */
export function slips(typed: string, word: string): number | null {
  if (word.startsWith(typed)) return 0
  const most = mostSlips(typed.length)
  const least = leastToBeginning(typed, word, most)
  return least <= most ? least : null
}

/** One slip in a word of four letters, two in one of eight: a shorter word would become any other. */
const mostSlips = (length: number): number => (length < 4 ? 0 : length < 8 ? 1 : 2)

/**
 * Fewest letters to change, leave out, put in or swap with their neighbour, so that the typed text is
 * how the word begins. Optimal string alignment (Damerau 1964), the last row taken at its best.
 */
function leastToBeginning(typed: string, word: string, most: number): number {
  const wide = Math.min(word.length, typed.length + most)
  let before: number[] = []
  let above = Array.from({ length: wide + 1 }, (_, j) => j)
  for (let i = 1; i <= typed.length; i += 1) {
    const row = [i]
    for (let j = 1; j <= wide; j += 1) {
      const same = typed[i - 1] === word[j - 1]
      const swapped = typed[i - 1] === word[j - 2] && typed[i - 2] === word[j - 1]
      const ways = [at(above, j) + 1, at(row, j - 1) + 1, at(above, j - 1) + (same ? 0 : 1)]
      row.push(Math.min(...ways, swapped ? at(before, j - 2) + 1 : Number.POSITIVE_INFINITY))
    }
    before = above
    above = row
  }
  return Math.min(...above)
}

const at = (row: readonly number[], j: number): number => row[j] ?? Number.POSITIVE_INFINITY
