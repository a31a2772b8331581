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
 * @returns by the output that a cause outside the tree takes, if that is known, and by what holds
 */
export function chancesOfNaming(
  choices: readonly OutputCopy[],
  right: number,
): (at: string | undefined, held: ReturnType<Holding>) => Chances {
  const even = (copies: readonly OutputCopy[], share: number) =>
    copies.map(({ output }) => [output, share / copies.length] as const)
  const rows = new Map<string, Chances>()
  return (at, held) => {
    const theirs = choices.filter(({ name, output }) => held.has(name) || output === at)
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
