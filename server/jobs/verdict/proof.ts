import type { Case } from '../../knowledge/case.ts'
import { fill, fillingsOf } from '../../knowledge/instantiate/words.ts'
import type { Proof } from '../../knowledge/schema/proof.ts'
import type { Standing } from '../standing/standing.ts'
import { fittedFirst, setForWork, stillOff } from '../standing/still-apart.ts'
import { lowerFirst, sentence } from '../words/sentences.ts'

/**
 * Everything that a proof asks for, in the order in which it can be done: what was fitted for checks goes, what has to be
 * apart is measured, all is joined and looked over, the spark is seen, testers come out, covers that had let one get at
 * it and the drive go on, and only then is the engine started. It ends stopped.
 */
export function proofSteps(
  input: Pick<Standing, 'asItStands' | 'kase' | 'knowledge'>,
  parts: readonly string[],
): string[] {
  const { kase } = input
  const complaint = kase.complaint.prove
  const proofs = proofsBeside(complaint, kase, parts)
  const all = (when: Exclude<keyof Proof, 'sees'>) => [
    ...proofs.flatMap((proof) => proof[when] ?? []).map(sentence),
    ...(complaint[when] ? [`Then the complaint itself: ${asClause(complaint[when])}`] : []),
  ]
  const cranking = all('cranking')
  const { first, covers, drive, last } = stillOff(input, cranking.length > 0)
  const running = all('running')
  return [
    ...new Set([
      ...fittedFirst(input),
      ...all('stopped'),
      ...first,
      walkRound,
      ...cranking,
      testersOut,
      ...covers,
      everyCover,
      ...drive,
      ...(kase.machine.stop ? [sentence(kase.machine.stop.try)] : []),
      ...(running.length > 0 ? [setForWork(kase.machine)] : []),
      ...running,
      ...stopped(kase.machine, running),
      ...last,
    ]),
  ]
}

/** How these parts are proved, but for what the proof of the complaint shows as well: nobody does that twice. */
export function proofsBeside(
  complaint: Proof,
  { parts: cards }: Pick<Case, 'parts'>,
  parts: readonly string[],
): Proof[] {
  const first = complaint.cranking === undefined ? 'running' : 'cranking'
  return parts.flatMap((part) => {
    const proof = cards.get(part)?.prove
    if (proof?.sees === undefined || proof.sees !== complaint.sees) return proof ?? []
    const { [first]: _, ...others } = proof
    return others
  })
}

/** A proof in one breath: "measure the new winding. Hear the pump hum." */
export function proofClause(proof: Proof): string {
  const { stopped, cranking, running } = proof
  const said = [stopped, cranking, running].flatMap((says) => says ?? [])
  return lowerFirst(said.map(sentence).join(' '))
}

/** After the last run, where its own words do not say so. */
function stopped(machine: Case['machine'], running: readonly string[]): string[] {
  const off = fill('{off}', fillingsOf(machine))
  const isSaid = running.at(-1)?.toLowerCase().includes(off.toLowerCase()) ?? true
  return isSaid ? [] : [sentence(`Stop it: ${lowerFirst(off)}`)]
}

const asClause = (says: string) => lowerFirst(sentence(says))

/** What the repair itself took apart, nobody wrote down. Common practice. */
const walkRound =
  'Walk round the machine once: every connector joined, every ground tight, all leads clear of heat and belts.'

const everyCover = 'See that every cover is on.'

const testersOut =
  'See that no tester and no spare plug is left in a cap: every cap sits on its own plug, clicked home.'
