/** "a", "a and b", "a, b and c"; nothing for nothing. */
export function listed(items: readonly string[], last: 'and' | 'or' = 'and'): string {
  if (items.length < 2) return items.join('')
  return `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`
}

/** "1 fault", "3 faults", "1,204 faults" */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count.toLocaleString('en-GB')} ${count === 1 ? one : many}`
}

/** For use inside a sentence: "Start exciter" becomes "start exciter", but "AC supply" stays. */
export function lowerFirst(text: string): string {
  return /^\p{Lu}\p{Ll}/u.test(text) || /^A /.test(text)
    ? text.charAt(0).toLowerCase() + text.slice(1)
    : text
}

export function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
