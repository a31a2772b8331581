import type { Estimate } from '../../measure/correct/shared-path.ts'
import { exact as certain, chanceBetween } from '../../measure/doubt/uncertainty.ts'
import { printLimits, printValue } from '../../measure/reading/print.ts'
import type { Limits } from '../../measure/reading/reading.ts'
import { type Read, readingsTogether, type Together } from '../measuring/together/together.ts'
import type { Standing } from '../standing/standing.ts'
import { listed, percent, plusMinus, the, upperFirst } from '../words/sentences.ts'

/** What readings say together, without being asked, a sentence or two each. */
export function presentTogether({ judged, kase }: Standing): string[] {
  const reads = [...judged].flatMap(([check, { measured }]): Read[] => {
    const card = kase.checks.get(check)
    return card?.measurand && measured ? [{ card, by: card.measurand, measured }] : []
  })
  const nameOf = (part = '') => the(kase.parts.get(part)?.name ?? part)
  return readingsTogether(kase.machine, reads).map((each) => togetherSentence(each, nameOf))
}

/** Half-width of 95 % of a bell curve. */
const wide = 1.96

type NameOf = (part: string | undefined) => string

function togetherSentence(together: Together, nameOf: NameOf): string {
  switch (together.kind) {
    case 'difference':
      return differenceSentence(together)
    case 'twins':
      return twinsSentence(together, nameOf)
    case 'leak':
      return leakSentence(together)
  }
}

/** "Through … 14.2 kΩ minus 9.1 kΩ at … leaves 5.1 kΩ ± 0.2 kΩ for the lead and the cap." */
function differenceSentence({
  whole,
  part,
  between,
  left,
  limits,
}: Extract<Together, { kind: 'difference' }>): string {
  const names = listed(between.map(({ name }) => the(name)))
  const { unit } = whole.by.quantity
  const doubt = plusMinus(wide * left.u, unit)
  const says = `${readAt(whole)}, minus ${readAt(part)}, leaves ${printValue(left.value, unit)} ${doubt} for ${names}.`
  if (limits === undefined) return says
  return `${says} Good ones have ${printLimits(limits, unit)}: ${percent(chanceWithin(left, limits))} within that.`
}

function chanceWithin({ value, u }: Estimate, { low, high }: Limits): number {
  // Series parts have no negative resistance, so from 0 means from below.
  const from = low === undefined || low === 0 ? -Infinity : low - value
  const to = (high ?? Infinity) - value
  return chanceBetween(from, to, u > 0 ? { u, rectangles: [0, 0], normal: u } : certain)
}

/** Two parts made alike differ by less than these as a rule. Common practice. */
const alike = { quite: 0.05, nearly: 0.1 }

/** "The left pickup and the right pickup read alike: 1.02 to 1." */
function twinsSentence(
  { one, other, ratio }: Extract<Together, { kind: 'twins' }>,
  nameOf: NameOf,
): string {
  const [first, second] = [nameOf(one.card.part), nameOf(other.card.part)]
  const [large, small] = ratio.value >= 1 ? [first, second] : [second, first]
  const value = ratio.value >= 1 ? ratio.value : 1 / ratio.value
  const doubt = wide * (ratio.u / ratio.value) * value
  const to1 = `${value.toFixed(2)} to 1 (± ${Number(doubt.toPrecision(2))})`
  const names = `${upperFirst(first)} and ${second}`
  const apart = value - 1
  if (Math.max(apart, doubt) <= alike.quite) return `${names} read alike: ${to1}.`
  if (Math.max(apart, doubt) <= alike.nearly) return `${names} read nearly alike: ${to1}.`
  if (apart <= Math.max(doubt, alike.nearly)) {
    return `${names} may read alike or not: ${to1} is all that this meter tells.`
  }
  return `${upperFirst(large)} reads more than ${small}, its twin: ${to1}. Parts made alike differ less than that.`
}

function leakSentence({
  line,
  ground,
  position,
  least,
  most,
}: Extract<Together, { kind: 'leak' }>): string {
  const where =
    position < 1
      ? `Both together: a leak at one place would lie within the first ${percent(position)} of the winding, from that line on`
      : 'Both together: a leak at one place may lie anywhere in the winding'
  const { unit } = ground.by.quantity
  const through =
    least > 0
      ? `with ${printValue(least, unit)} to ${printValue(most, unit)} of its own`
      : `with ${printValue(most, unit)} of its own at most`
  return `${read(line)} from line to line, ${read(ground)} from one line to ground. ${where}, ${through}.`
}

const read = ({ by, measured }: Read) => printValue(measured.asRead as number, by.quantity.unit)

/** "14.2 kΩ at the coil tower and pin 1 of the coil plug" */
function readAt(one: Read): string {
  const place = one.card.spot ? ` at ${one.card.spot.says}` : ''
  return `${read(one)}${place}`
}
