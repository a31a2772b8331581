import type { Page } from 'playwright-core'

/** What was said: a text, in which language, by which voice. */
export interface Said {
  readonly text: string
  readonly lang: string
  readonly voice: string | undefined
}

/** Gives the pages of this window a voice that keeps what it is told to say, and says it when told to go on. */
export async function giveVoice(page: Page, names = ['far en-GB', 'near en-US', 'near en-GB']) {
  await page.addInitScript(`{
    const voices = ${JSON.stringify(names)}.map((name) =>
      ({ name, lang: name.split(' ')[1], localService: name.startsWith('near') }))
    const own = { said: [], waiting: [], cancelled: 0 }
    window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text } }
    const speech = Object.assign(new EventTarget(), {
      getVoices: () => voices,
      speak: (it) => {
        own.said.push({ text: it.text, lang: it.lang, voice: it.voice?.name })
        own.waiting.push(it)
      },
      cancel: () => {
        own.cancelled += 1
        for (const it of own.waiting.splice(0)) it.onerror?.()
      },
    })
    Object.defineProperty(window, 'speechSynthesis', { value: speech })
    Object.assign(window, { own, voices })
  }`)
  return {
    said: (): Promise<Said[]> => page.evaluate('own.said'),
    /** Nothing is left to be said. */
    isSilent: (): Promise<boolean> => page.evaluate('own.waiting.length === 0'),
    /** Says all that it was told to say, to the end. */
    finish: () => page.evaluate('for (const it of own.waiting.splice(0)) it.onend?.()'),
  }
}
