import { inputsOf } from '../instantiate/tree.ts'
import type { Knowledge } from '../knowledge.ts'
import type { GateInput } from '../schema/complaint.ts'
import type { Complaint } from '../schema/index.ts'
import type { Report } from './report.ts'

type Any = Extract<GateInput, { any: string }>

/** How often a failure brings a complaint stands at the branches of its tree, and is the same wherever it hangs. */
export function bringsRule(knowledge: Knowledge, report: Report): void {
  for (const [, complaint] of knowledge.complaints) {
    for (const [id, gate] of Object.entries(complaint.watched ?? {})) {
      if (inputsOf(gate).some((input) => 'any' in input && input.brings !== undefined)) {
        const says = `gate ${id} is no branch of the tree: write brings where its failures hang in it`
        report.add(complaint, ['watched', id], says)
      }
    }
    for (const [id, { any }] of differing(complaint)) {
      const says = `gate ${id}: a failure of ${any} has another brings, or none, under another gate: write the same at each`
      report.add(complaint, ['gates', id], says)
    }
  }
}

/** Inputs, each with its gate, that name a failure which an input before them has with another `brings`. */
function differing({ gates }: Complaint): (readonly [string, Any])[] {
  const all = Object.entries(gates).flatMap(([id, gate]) =>
    inputsOf(gate).flatMap((input) => ('any' in input ? [[id, input] as const] : [])),
  )
  return all.filter(([, input], at) =>
    all
      .slice(0, at)
      .some(
        ([, before]) =>
          JSON.stringify(before.brings) !== JSON.stringify(input.brings) && overlap(before, input),
      ),
  )
}

/** Whether some failure may be meant by both. */
function overlap(a: Any, b: Any): boolean {
  if (a.any !== b.any) return false
  const isMeant = ({ modes, except = [] }: Any, mode: string) =>
    (modes === undefined || modes.includes(mode)) && !except.includes(mode)
  const named = [...(a.modes ?? []), ...(b.modes ?? [])]
  if (named.length === 0) return true
  return named.some((mode) => isMeant(a, mode) && isMeant(b, mode))
}
