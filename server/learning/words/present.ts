import { entry } from '../../diagnosis/model/named.ts'
import { partPicture } from '../../drawings/parts/pictures.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { wordHref } from './hrefs.ts'

/** One word of the trade. */
export interface WordView {
  readonly id: string
  readonly word: string
  readonly says: string
  /** A drawing, or nothing. */
  readonly picture: string
  readonly see: readonly { readonly href: string; readonly text: string }[]
}

export interface WordsPage {
  readonly title: string
  readonly words: readonly WordView[]
}

/** @throws RangeError if there is no such word */
export function presentWord({ glossary: { words } }: Knowledge, id: string): WordView {
  const { word, says, picture, see = [] } = entry(words, id)
  return {
    ...{ id, word, says },
    picture: picture === undefined ? '' : partPicture(picture),
    see: see.map((each) => ({ href: wordHref(each), text: entry(words, each).word })),
  }
}

export function presentWords(knowledge: Knowledge): WordsPage {
  return {
    title: 'Words of the trade',
    words: Object.keys(knowledge.glossary.words).map((id) => presentWord(knowledge, id)),
  }
}
