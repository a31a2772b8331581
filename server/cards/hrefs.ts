/** Where the pocket cards of a machine are listed. */
export const cardsHref = (machine: string): string =>
  `/machines/${encodeURIComponent(machine)}/cards`

/** Where one of them is, or with `book` all of them. */
export function cardHref(machine: string, complaint: string, tools: string): string {
  const query = new URLSearchParams({ tools })
  return `${cardsHref(machine)}/${encodeURIComponent(complaint)}?${query}`
}
