import type { Knowledge } from '../../knowledge/knowledge.ts'

/** The words of the glossary that a text uses, by name, in the order of the glossary. */
export function wordsIn({ glossary }: Knowledge, text: string): string[] {
  return Object.entries(glossary.words)
    .filter(([, { word, forms = [] }]) => [word, ...forms].some((form) => isIn(text, form)))
    .map(([id]) => id)
}

/** As a whole word, large or small, one or several. */
function isIn(text: string, form: string): boolean {
  const plain = form.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')
  return new RegExp(`(?<!\\p{L})${plain}s?(?!\\p{L})`, 'iu').test(text)
}
