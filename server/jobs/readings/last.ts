import { branches } from '../../diagnosis/belief/branches.ts'
import { suspects } from '../../diagnosis/belief/suspects.ts'
import { numbered } from '../../diagnosis/model/named.ts'
import type { Walk } from '../../diagnosis/model/walk.ts'
import { weights } from '../../diagnosis/verdict/explain.ts'
import { gained, lost, type Move, movesBetween, movesOf } from '../../diagnosis/verdict/gained.ts'
import type { CheckCard } from '../../knowledge/case.ts'
import { cautionCards } from '../../knowledge/instantiate/caution-cards.ts'
import { allowsFurtherTake, type Judged } from '../measuring/judged.ts'
import { partedTakes } from '../measuring/parted.ts'
import { type Asked, notListed } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { beforeTheRun, setForWork } from '../standing/still-apart.ts'
import { branchClause, branchesCleared } from '../words/branch-words.ts'
import { cautionsView } from '../words/cautions/cautions.ts'
import { partNames, suspectName } from '../words/names.ts'
import { readInWords, verdictWord, weightWords } from '../words/reading-words.ts'
import { clauses, percent, sentence, the, upperFirst } from '../words/sentences.ts'
import { nearerCheck } from './nearer.ts'
import { noteSentences } from './notes.ts'
import { partedWords } from './parted.ts'
import type { LastReading } from './view.ts'

/**
 * What came back last and what it meant, for the top of the page; nothing before the first reading.
 *
 * @param meant what a reading meant; left out: what it did to the suspects
 */
export function presentLast(
  input: Standing & Pick<Asked, 'found'>,
  meant: (input: Standing, check: string) => string = meaning,
): LastReading | undefined {
  const { job, kase, judged } = input
  const check = lastCheck(input)
  const taken = check === undefined ? undefined : judged.get(check)
  const card = check === undefined ? undefined : kase.checks.get(check)
  if (check === undefined || taken === undefined || card === undefined) return undefined
  const address = `/jobs/${job.id}?`
  const nearer = nearerCheck(input, card)
  return {
    says: sentence(readInWords(kase, card, taken)),
    word: verdictWord(card, taken),
    means: [
      partedWords(kase, card, taken),
      meant(input, check),
      taken.parted ? '' : whyUnsure(input, card, taken.measured),
    ]
      .filter(Boolean)
      .join(' '),
    ...mended(input, card, taken),
    correctHref: `${address}correct=${encodeURIComponent(check)}`,
    ...(card.measurand &&
      taken.measured?.decision !== 'conforms' &&
      allowsFurtherTake(kase, check) && {
        again: {
          href: `${address}take=${encodeURIComponent(check)}`,
          text: card.measurand.quantity.touches.another,
        },
        ...(nearer && { nearer }),
      }),
  }
}

/** What the answer says can be put right; nothing while a repair is written down, or once one has helped. */
function mended(
  input: Standing & Pick<Asked, 'found'>,
  { id: check, answers = [], cautions }: CheckCard,
  { reading }: Judged,
): Pick<LastReading, 'mend'> {
  const { job, kase, folded, knowledge, found } = input
  const mend = answers.find(({ id }) => reading.kind === 'answer' && reading.answer === id)?.mend
  const isTried = folded.putRight.get(check) === 'still there'
  const last = folded.repairs.at(-1)
  const isRepaired = last !== undefined && last.outcome !== 'still there'
  if (mend === undefined || isTried || found !== undefined || isRepaired) return {}
  return {
    mend: {
      says: sentence(mend.says),
      cautions: {
        ...cautionsView([
          ...cautionCards(kase.complaint.cautions ?? [], knowledge, kase.machine),
          ...cautions,
          ...(mend.cautions ?? []),
        ]),
        inFull: [],
      },
      back: beforeTheRun(input),
      setForWork: setForWork(kase.machine),
      ways: [
        ...mend.parts.flatMap((part) => {
          const card = kase.parts.get(part)
          const href = `/jobs/${job.id}?found=${encodeURIComponent(part)}`
          return card ? [{ href, text: `It was ${the(card.name)}` }] : []
        }),
        ...(mend.elsewhere
          ? [{ href: `/jobs/${job.id}?found=${notListed}`, text: 'Write down what it was' }]
          : []),
      ],
    },
  }
}

/** The check that was read, corrected or made once more last, if its reading still stands. */
function lastCheck({ job, folded }: Standing): string | undefined {
  const last = job.events.findLast(
    ({ event }) => 'touches' in event && folded.readings.has(event.check),
  )
  return last && 'check' in last.event ? last.event.check : undefined
}

/** What it took off the list, or else where it moved the suspicion. */
export function meaning(input: Standing, check: string): string {
  const { kase, evidence } = input
  if (!kase.checks.has(check)) return changesLittle
  const moves = movesOf(kase.model, evidence, check)
  return moveWords(input, moves, check) || weighed(input, check) || changesLittle
}

/** The same of a reading by its place among them, as it was known once it was taken and before the next one was. */
export function meaningThen(
  { kase, evidence }: Pick<Standing, 'kase' | 'evidence'>,
  history: readonly (readonly number[])[],
  place: number,
): string {
  const { model } = kase
  const upTo = place + 1
  const checks = evidence.slice(0, upTo).map(({ check }) => check)
  const moves = movesBetween(model, numbered(history, place), numbered(history, upTo))
  const then = { branches: branches(model, history.slice(0, upTo + 1), checks) }
  const check = numbered(checks, place)
  const words = moveWords({ kase, evidence, walk: then }, moves, check)
  if (words !== '') return words
  const isElse = suspects(model, numbered(history, upTo))[0]?.part === null
  const known = { kase, evidence: evidence.slice(0, upTo) }
  return (isElse && speaksFor(known, null, check)) || changesLittle
}

const changesLittle = 'That changes little.'

/** Nothing where it moved nothing worth telling. */
function moveWords(
  known: Pick<Standing, 'kase' | 'evidence'> & { readonly walk: Pick<Walk, 'branches'> },
  moves: ReadonlyMap<string, Move>,
  check: string,
): string {
  const { kase } = known
  const cleared = lost(moves, branchesCleared(known).get(check) ?? [])
  const moved = gained(kase.model, moves)
  // What became so likely that others fell away is the news, and not what fell away.
  const isNews = moved !== null && moved.now - moved.before >= newsFrom
  if (cleared.length > 0 && !isNews) {
    const out = cleared.map((name) => branchClause(kase, name))
    return `Rules out: ${clauses(out, 1)}.`
  }
  if (moved === null) return ''
  const { name, before, now } = moved
  return `${upperFirst(branchClause(kase, name))}: ${percent(before)} before, ${percent(now)} now.`
}

/**
 * Where others say the same already, one reading moves little by itself; where there is a verdict, how strongly it speaks
 * for what is blamed is then said as there.
 */
function weighed({ kase, evidence, walk }: Standing, check: string): string {
  const { step } = walk
  const part = step.kind === 'named' ? step.parts[0] : walk.suspects[0]?.part
  // What is none of the tree shows in no branch, so nothing else would say that it has become likelier.
  if (part === undefined || (step.kind === 'ask' && part !== null)) return ''
  return speaksFor({ kase, evidence }, part, check)
}

/** How strongly a reading speaks for or against a part; of what is not listed, only where it speaks for it. */
function speaksFor(
  { kase, evidence }: Pick<Standing, 'kase' | 'evidence'>,
  part: string | null,
  check: string,
): string {
  const { bits = 0 } =
    weights(kase.model, evidence, part).find((each) => each.check === check) ?? {}
  if (part === null && bits < tellsElse) return ''
  const words = weightWords(bits, part === null ? suspectName(kase, null) : partNames(kase, [part]))
  return words && `${upperFirst(words)}.`
}

/** Fewer bits for what is not listed are not worth a sentence. */
const tellsElse = 1

/** So much more likely, in probability, that it is said before anything else. */
const newsFrom = 0.2

/** Of a reading that leaves it open: why, and what would help. */
function whyUnsure(
  { kase, folded, walk }: Standing,
  card: CheckCard,
  measured: Judged['measured'],
): string {
  const by = card.measurand
  const taken = folded.readings.get(card.id)
  if (!measured || !by || !taken || measured.decision !== 'undecided') return ''
  const { touches } = partedTakes(kase, folded, card, taken).first
  const [first = ''] = noteSentences(measured, by, touches, walk.step.kind === 'named')
  return first
}
