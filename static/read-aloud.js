// A button with `data-reads` reads aloud what it names: selectors in the order of reading, divided by semicolons.
// It is shown only where the browser has a voice of its own, and falls silent at a second press.
{
  const speech = window.speechSynthesis
  const units = [
    ['kΩ', ' kilohms'],
    ['MΩ', ' megohms'],
    ['Ω', ' ohms'],
    ['°C', ' degrees Celsius'],
    ['°F', ' degrees Fahrenheit'],
    ['±', ' plus or minus '],
    ['−', ' minus '],
  ]
  let pressed = null
  let round = 0

  // Voices may come long after the page, or never.
  const showIfVoice = () => {
    const isThere = speech.getVoices().length > 0
    document.documentElement.classList.toggle('can-read', isThere)
  }
  if (speech) {
    showIfVoice()
    speech.addEventListener('voiceschanged', showIfVoice)
    // The voice would go on after the page is gone.
    window.addEventListener('pagehide', stop)
    document.addEventListener('htmx:after:swap', () => {
      if (pressed && !pressed.isConnected) stop()
    })
    document.addEventListener('click', ({ target }) => {
      const button = target.closest('[data-reads]')
      if (!button) return
      const again = button === pressed
      stop()
      if (!again) start(button)
    })
  }

  function start(button) {
    const texts = textsOf(button.dataset.reads)
    if (texts.length === 0) return
    pressed = button
    button.dataset.start = button.textContent
    button.textContent = button.dataset.stop
    round += 1
    const own = round
    for (const [i, text] of texts.entries()) {
      const said = new SpeechSynthesisUtterance(text)
      said.lang = 'en-GB'
      said.voice = voice()
      const isLast = i === texts.length - 1
      // What is cut short ends, too, and by then another round may have begun.
      if (isLast) said.onend = () => own === round && stop()
      said.onerror = () => own === round && stop()
      speech.speak(said)
    }
  }

  function stop() {
    round += 1
    speech.cancel()
    if (pressed) pressed.textContent = pressed.dataset.start
    pressed = null
  }

  // One that needs no network, where there is one; otherwise the browser chooses by the language.
  function voice() {
    const own = speech.getVoices().filter(({ lang, localService }) => localService && /^en\b/.test(lang))
    return own.find(({ lang }) => lang.replace('_', '-') === 'en-GB') ?? own[0] ?? null
  }

  function textsOf(reads) {
    const elements = reads.split(';').flatMap((each) => [...document.querySelectorAll(each)])
    const texts = [...new Set(elements)].filter((it) => it.checkVisibility()).map(spoken)
    return texts.filter((text) => text !== '')
  }

  function spoken(element) {
    const text = units.reduce((so, [sign, word]) => so.replaceAll(sign, word), element.textContent)
    return text.replaceAll(/\s+/g, ' ').trim()
  }
}
