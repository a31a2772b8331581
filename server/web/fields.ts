/** One text field of a posted form or a query; empty where it did not come. Of several, the first. */
export function textOf(form: unknown, name: string): string {
  return textsOf(form, name)[0] ?? ''
}

/** All values under one name, as checkboxes send them. */
export function textsOf(form: unknown, name: string): string[] {
  const value: unknown = Object(form)[name]
  return (Array.isArray(value) ? value : [value]).filter((each) => typeof each === 'string')
}

/** A whole number written in plain digits, or null: what else might come is nobody's number. */
export function wholeOf(text: string): number | null {
  return /^\d{1,15}$/.test(text) ? Number(text) : null
}

/** A plain number as people write it: `-25`, `−5`, `21,5`. */
export function numberIn(text: string): number | null {
  const plain = text.trim().replace('−', '-').replace(',', '.')
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null
}
