import { checkNamed } from '../../diagnosis/belief/belief.ts'
import { likeliest } from '../../diagnosis/belief/likeliest.ts'
import { certainFrom, mostTakes } from '../../diagnosis/belief/takes.ts'
import type { Shared } from '../../diagnosis/model/model.ts'
import type { Case, CheckCard } from '../../knowledge/case.ts'
import type { Owner } from '../../knowledge/schema/phone/owner.ts'
import type { Measured } from '../../measure/measured.ts'
import type { Reading, Touches } from '../../measure/reading/reading.ts'
import type { Folded, Recorded } from '../record/fold.ts'
import { measuredReading } from './measured-reading.ts'
import type { MeterAtHand } from './meter-at-hand.ts'
import { type PartedTakes, partedTakes } from './parted.ts'

/** A check that was made, and what came of it. */
export interface Judged {
  /** The one reading that all touches come to, or the answer. */
  readonly reading: Reading
  /** What it is worth, where it was measured. */
  readonly measured: Measured | null
  /** How well each outcome of the check explains it: what belief weighs. All alike tells nothing. */
  readonly likelihoods: readonly number[]
  /** The same at each speed it may have been read at, where nobody measured that. */
  readonly shared?: Shared
  /** What came back when it was made once more, as indices of outcomes; as far as belief weighs it. */
  readonly furtherTakes: readonly number[]
  /** Of an answer, every look in order. Empty where it is measured. */
  readonly takes: readonly Reading[]
  /** What came out otherwise once a connector on the way had been apart, and those connectors; it weighs nothing. */
  readonly parted?: { readonly came: Judged; readonly plugs: readonly string[] }
}

/** Every reading of a job, judged. One whose check left the knowledge stays, and weighs nothing. */
export function judgedReadings(
  kase: Case,
  folded: Folded,
  meter: MeterAtHand,
  { answers: { astray } }: Owner,
): ReadonlyMap<string, Judged> {
  return new Map(
    [...folded.readings].map(([check, taken]) => {
      const card = kase.checks.get(check)
      const judged = card
        ? judgedTakes(kase, card, partedTakes(kase, folded, card, taken), meter)
        : asItStands(taken)
      return [check, taken.conditions.who === 'owner' ? fromOwner(judged, astray) : judged]
    }),
  )
}

/**
 * What an owner gave on the phone: with this share it says nothing about the machine, whatever it says, so each
 * outcome explains it at least that well. Mixed so, the weight of a cut set is the sum over both cases
 * (law of total probability).
 */
function fromOwner(judged: Judged, astray: number): Judged {
  const { likelihoods, shared } = judged
  return {
    ...judged,
    likelihoods: mixedIn(likelihoods, astray),
    ...(shared && {
      shared: { ...shared, likelihoods: shared.likelihoods.map((row) => mixedIn(row, astray)) },
    }),
  }
}

function mixedIn(likelihoods: readonly number[], astray: number): number[] {
  const mean = likelihoods.reduce((a, b) => a + b, 0) / likelihoods.length
  return likelihoods.map((each) => (1 - astray) * each + astray * mean)
}

/** Whether a second take of a check can come out otherwise than the first: an owner's memory cannot. */
export function canSlip({ model }: Case, check: string): boolean {
  return checkNamed(model, check).slips !== undefined
}

/** Whether a check can be made once more: a measured one always, with more touches. */
export function allowsFurtherTake(kase: Case, check: string): boolean {
  return kase.checks.get(check)?.measurand !== undefined || canSlip(kase, check)
}

function asItStands({ touches }: Recorded): Judged {
  return { reading: touches[0], measured: null, likelihoods: [], furtherTakes: [], takes: touches }
}

/**
 * What comes out alike once a connector was apart is one more take: parting it has changed nothing. What comes out
 * otherwise may come of that as well as of a slip, and says nothing of what was there before.
 */
function judgedTakes(
  kase: Case,
  card: CheckCard,
  { first, later }: PartedTakes,
  meter: MeterAtHand,
): Judged {
  const slips = canSlip(kase, card.id)
  const judged = judgedReading(card, first, slips, meter)
  const came = later && judgedReading(card, later.taken, slips, meter)
  if (!later || !came || came.reading.kind === 'could-not-tell') return judged
  const outcome = certainOf(judged.likelihoods)
  const again = [certainOf(came.likelihoods), ...came.furtherTakes]
  const takes = [...judged.takes, ...came.takes]
  if (outcome === null || again.some((each) => each !== outcome)) {
    return { ...judged, takes, parted: { came, plugs: later.plugs } }
  }
  if (!slips) return { ...judged, takes }
  const furtherTakes = [...judged.furtherTakes, ...again].flatMap((each) => each ?? [])
  return { ...judged, takes, furtherTakes: furtherTakes.slice(0, mostTakes - 1) }
}

/** The outcome that a reading leaves no doubt of; null where it leaves some. */
function certainOf(likelihoods: readonly number[]): number | null {
  const total = likelihoods.reduce((a, b) => a + b, 0)
  return Math.max(...likelihoods) < certainFrom * total ? null : likeliest(likelihoods)
}

function judgedReading(
  card: CheckCard,
  taken: Recorded,
  slips: boolean,
  meter: MeterAtHand,
): Judged {
  const measured = measuredReading(card, taken, meter, taken.conditions)
  if (measured !== null && measured.asRead !== null) {
    const reading: Reading =
      measured.asRead === 'OL' ? { kind: 'over' } : { kind: 'value', value: measured.asRead }
    const { evidence, bySpeed } = measured
    return {
      reading,
      measured,
      likelihoods: evidence,
      ...(bySpeed && { shared: { of: bySpeed.of, likelihoods: bySpeed.evidence } }),
      furtherTakes: slips ? furtherTakesIn(measured) : [],
      takes: [],
    }
  }
  return judgedAnswers(card, taken.touches, slips)
}

/** A look that told nothing, or that the knowledge has no answer for any more, weighs nothing. */
function judgedAnswers(card: CheckCard, looks: Touches, slips: boolean): Judged {
  const told = looks.flatMap((look) =>
    look.kind === 'answer'
      ? card.outcomes.indexOf(card.countedAs?.[look.answer] ?? look.answer)
      : [],
  )
  const [first, ...more] = told.filter((o) => o >= 0)
  return {
    reading: looks.find(({ kind }) => kind === 'answer') ?? looks[0],
    measured: null,
    likelihoods: card.outcomes.map((_, o) => (first === undefined || o === first ? 1 : 0)),
    furtherTakes: slips ? more.slice(0, mostTakes - 1) : [],
    takes: card.measurand ? [] : looks,
  }
}

/**
 * Touches that came to the same are takes of the check, but for those that share a clip: these are one.
 * What settled apart from them was contact, and where the meter cannot tell the band it cannot tell it twice.
 */
function furtherTakesIn({ contact, evidence }: Measured): number[] {
  const outcome = certainOf(evidence)
  if (outcome === null) return []
  return new Array(Math.min(contact?.bySelf ?? 1, mostTakes) - 1).fill(outcome)
}
