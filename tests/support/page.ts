/** What a page says, without its markup. */
export function textIn(html: string): string {
  return decoded(
    html.replaceAll(/<(script|style|svg)\b.*?<\/\1>/gs, ' ').replaceAll(/<[^>]+>/g, ' '),
  )
    .replaceAll(/\s+/g, ' ')
    .trim()
}

/** The value of the first input of that name, as a browser would send it. */
export function valueIn(html: string, name: string): string {
  const input = html.match(new RegExp(`<input\\b[^>]*\\bname="${name}"[^>]*>`))?.[0]
  const value = input?.match(/\bvalue="([^"]*)"/)?.[1]
  if (value === undefined) throw new Error(`There is no input called ${name} with a value.`)
  return decoded(value)
}

/** The first form of a page with hidden fields only: where it leads, and its fields as a browser sends them. */
export function formIn(html: string): { action: string; fields: [string, string][] } {
  const form = html.match(/<form\b[^>]*\baction="([^"]*)"[^>]*>(?:\s*<input type="hidden"[^>]*>)*/)
  if (form === null) throw new Error('There is no form.')
  const inputs = form[0].matchAll(/<input type="hidden" name="([^"]*)" value="([^"]*)">/g)
  const fields = [...inputs].map(([, name, value]): [string, string] => [
    decoded(name!),
    decoded(value!),
  ])
  return { action: decoded(form[1]!), fields }
}

/** Where the links and forms of a page lead. */
export function addressesIn(html: string): string[] {
  return [...html.matchAll(/\b(?:href|action)="([^"#]+)/g)].map((match) => decoded(match[1]!))
}

/** The numbered lists of a page by their headings: what it says to do, a sentence each. */
export function listsIn(html: string): ReadonlyMap<string, readonly string[]> {
  const lists = html.matchAll(/<h3[^>]*>([^<]+)<\/h3>\s*(?:<p>[^<]*<\/p>\s*)?<([ou]l)\b.*?<\/\2>/gs)
  return new Map(
    [...lists].map(([all, title]) => [
      title!,
      [...all.matchAll(/<li>(.*?)<\/li>/gs)].map(([, item]) => textIn(item!)),
    ]),
  )
}

const entities: Readonly<Record<string, string>> = {
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
  '&amp;': '&',
}

export const decoded = (text: string) =>
  text.replaceAll(/&(?:lt|gt|quot|#39|amp);/g, (e) => entities[e]!)
