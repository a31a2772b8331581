import { expect } from 'vitest'

/** How a server ends that cannot start: nothing printed, one line of complaint without a stack. */
export function oneSentence(beginning: string) {
  const escaped = beginning.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')
  const complained = expect.stringMatching(new RegExp(`^(trees/)?${escaped}[^\\n]*\\n$`))
  return { code: 1, printed: '', complained }
}
