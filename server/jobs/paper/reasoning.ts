import { beliefs } from '../../diagnosis/belief/belief.ts'
import { suspects } from '../../diagnosis/belief/suspects.ts'
import { named } from '../../diagnosis/model/named.ts'
import type { Suspect } from '../../diagnosis/model/walk.ts'
import { weights } from '../../diagnosis/verdict/explain.ts'
import { repairsInVain } from '../record/fold.ts'
import { stands } from '../record/repairs.ts'
import type { Standing } from '../standing/standing.ts'
import { branchClause, branchesCleared } from '../words/branch-words.ts'
import { partNames, repairedNames, suspectName } from '../words/names.ts'
import { readingInShort } from '../words/reading-words.ts'
import { counted, listed, percent, the, upperFirst } from '../words/sentences.ts'

/**
 * How it came to where it is, in at most five sentences: what was suspected at first, which readings told
 * most, what they ruled out, what is left, and what comes next or was repaired instead.
 */
export function reasoning(input: Standing): string[] {
  const read = input.judged.size > 0 ? [decided(input), ruledOut(input), left(input)] : []
  return [atFirst(input), ...read, andNow(input)].filter((sentence) => sentence !== '')
}

/** So many are named; all others are only counted. */
const mostNamed = 3

function atFirst(input: Standing): string {
  const { kase, folded } = input
  const [prior = []] = beliefs(kase.model, [])
  const parts = suspects(kase.model, prior).filter(({ part }) => part !== null)
  const first = withChances(input, parts.slice(0, mostNamed))
  const vain = repairsInVain(folded)
  const of = counted(parts.length, 'part')
  if (vain.length > 0) {
    return `The repair of ${repairedNames(kase, vain)} did not cure it, and of the ${of} left the likeliest were then ${first}.`
  }
  return `Of ${of} that can cause this complaint, the likeliest at first were ${first}.`
}

/** Weights of evidence add up: a reading below one bit would decide nothing. */
const tellsFrom = 1

function decided({ kase, evidence, judged, walk }: Standing): string {
  const part = walk.step.kind === 'named' ? walk.step.parts[0] : walk.suspects[0]?.part
  if (part === undefined || part === null) return ''
  const most = weights(kase.model, evidence, part)
    .filter(({ bits }) => bits >= tellsFrom)
    .slice(0, mostNamed)
    .map(({ check }) => readingInShort(kase, named(kase.checks, check), named(judged, check)))
  if (most.length === 0) return ''
  const points = most.length === 1 ? 'One reading points' : `${most.length} readings point`
  return `${points} to ${partNames(kase, [part])}: ${most.join('; ')}.`
}

function ruledOut(input: Standing): string {
  const { kase, walk } = input
  const names = [...branchesCleared(input).values()].flat()
  if (names.length === 0) return ''
  // What was the likeliest before anything was read is what somebody will ask about.
  const before = (name: string) => named(walk.branches, name).before
  const out = names.toSorted((a, b) => before(b) - before(a)).slice(0, mostRuledOut)
  const parts = walk.suspects.filter(({ part }) => part !== null)
  const gone = parts.filter(({ probability }) => probability < ruledOutBelow).length
  const clauses = out.map((name) => branchClause(kase, name)).join('; ')
  return `The readings rule out: ${clauses}; in all, ${gone} of ${counted(parts.length, 'part')} have less than 1\u00a0% left.`
}

const mostRuledOut = 4
const ruledOutBelow = 0.01

/** A chance below this is not worth naming. */
const worthNaming = 0.005

function left(input: Standing): string {
  const { step, suspects: now } = input.walk
  const blamed: readonly string[] = step.kind === 'named' ? step.parts : []
  const rest = now.filter(
    ({ part, probability }) => probability >= worthNaming && !blamed.includes(part ?? ''),
  )
  if (rest.length === 0) return 'Nothing else has a chance worth naming.'
  const more = rest.length - mostNamed
  const names = withChances(input, rest.slice(0, mostNamed))
  const others = more > 0 ? `, and ${counted(more, 'other')} less likely than these` : ''
  return blamed.length > 0
    ? `Beside that there may still be ${names}${others}.`
    : `What is left: ${names}${others}.`
}

function andNow({ kase, folded, walk }: Standing): string {
  const { step } = walk
  const last = folded.repairs.at(-1)
  if (stands(last)) {
    const isNamed =
      last.cause === undefined
        ? step.kind === 'named' && last.parts.some((part) => step.parts.includes(part))
        : step.kind === 'outsideThisTree'
    return isNamed
      ? ''
      : `What was repaired is ${repairedNames(kase, [last])}, which the readings alone did not name.`
  }
  if (step.kind !== 'ask') return ''
  return `The next check would be “${upperFirst(named(kase.checks, step.proposal.check).title)}”.`
}

function withChances({ kase }: Standing, these: readonly Suspect[]): string {
  return listed(
    these.map(({ part, probability }) => {
      const name = suspectName(kase, part)
      return `${part === null ? name : the(name)} (${percent(probability)})`
    }),
  )
}
