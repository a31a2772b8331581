export const wordsHref = '/learn/words'
export const wordHref = (word: string): string => `${wordsHref}#${word}`
export const learnHref = (complaint: string, machine?: string): string =>
  `/learn/${encodeURIComponent(complaint)}${machine === undefined ? '' : `?${new URLSearchParams({ machine })}`}`
export const practiseHref = (machine: string, complaint: string): string =>
  `/practice?${new URLSearchParams({ machine, complaint })}`
