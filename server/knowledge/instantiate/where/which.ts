import type { Holding } from '../../../diagnosis/tree/fault-tree.ts'
import type { Chances } from '../../schema/shared.ts'
import type { DrawnTree, GateCopy } from '../tree.ts'

/** The copy of a gate for one output. */
export type OutputCopy = GateCopy & { readonly output: string }

/** The outputs that a gate is asked of; none where there is but one, and nobody asks which. */
export function choicesOf(gate: string, { copies }: DrawnTree): readonly OutputCopy[] {
  const choices = (copies.get(gate) ?? []).filter(isOfOutput)
  return choices.length < 2 ? [] : choices
}

const isOfOutput = (copy: GateCopy): copy is OutputCopy => copy.output !== undefined

/**
 * Chances of naming each of them, by the faults. Where the gate holds for none of them, some output is named all the
 * same, and that says nothing.
 *
 * @param right share of the answers that name one for which it holds
 */
export function chancesOfNaming(
  choices: readonly OutputCopy[],
  right: number,
  holding: Holding,
): (faults: readonly string[]) => Chances {
  const even = (copies: readonly OutputCopy[], share: number) =>
    copies.map(({ output }) => [output, share / copies.length] as const)
  const rows = new Map<string, Chances>()
  return (faults) => {
    const held = holding(faults)
    const theirs = choices.filter(({ name }) => held.has(name))
    const name = theirs.map(({ output }) => output).join()
    const others = choices.filter((each) => !theirs.includes(each))
    const isOpen = theirs.length === 0 || others.length === 0
    const row =
      rows.get(name) ??
      Object.fromEntries(
        isOpen ? even(choices, 1) : [...even(theirs, right), ...even(others, 1 - right)],
      )
    rows.set(name, row)
    return row
  }
}
