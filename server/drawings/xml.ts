const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** Text as it may stand in the markup of a drawing, between tags or in an attribute. */
export const escaped = (text: string): string =>
  text.replaceAll(/[&<>"']/g, (c) => entities[c] ?? c)
