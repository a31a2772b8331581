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
