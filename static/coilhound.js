// Says in words when the server cannot be reached: without this nothing at all would happen on the page.
document.addEventListener('htmx:error', () => {
  const said = document.getElementById('said')
  said.textContent = 'No answer from the server: nothing was taken. Try again in a moment.'
  said.classList.add('alarm')
})
document.addEventListener('htmx:after:swap', () => {
  document.getElementById('said').classList.remove('alarm')
})
// The keys beside the field type what meters show, where the cursor is.
document.addEventListener('click', ({ target }) => {
  const key = target.closest('[data-types]')
  if (!key) return
  const field = document.getElementById('typed')
  field.setRangeText(key.dataset.types, field.selectionStart, field.selectionEnd, 'end')
  field.focus()
})
// What is being typed of a reading stays in this window until it is sent, whatever page one looks at meanwhile.
const typedOf = 'input:not([type="hidden"]), select'
const draftOf = (form) => `draft ${form.getAttribute('action')} ${form.elements.check?.value}`
const fieldsOf = (form) => [...form.elements].filter((each) => each.matches(typedOf))
const readingForm = () => document.querySelector('form#reading')
document.addEventListener('input', ({ target }) => {
  const form = target.form
  if (form === null || form !== readingForm()) return
  const typed = fieldsOf(form).map(({ name, value }) => [name, value])
  sessionStorage.setItem(draftOf(form), JSON.stringify(typed))
})
// Sent, skipped or left as it was: nothing waits any more.
document.addEventListener('submit', ({ target }) => {
  const form = readingForm()
  if (form && target.closest('.answer')) sessionStorage.removeItem(draftOf(form))
})
const takeUpDraft = () => {
  const form = readingForm()
  const draft = form && sessionStorage.getItem(draftOf(form))
  // What came back with a sentence stands there as it was sent.
  if (!draft || form.querySelector('.problem')) return
  const typed = new Map(JSON.parse(draft))
  for (const field of fieldsOf(form)) field.value = typed.get(field.name) ?? field.value
}
document.addEventListener('htmx:after:swap', takeUpDraft)
takeUpDraft()
