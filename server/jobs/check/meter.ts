import type { CheckCard, Measurand } from '../../knowledge/case.ts'
import { bandName } from '../../measure/decide/bands.ts'
import { type Fitness, leadsMatter, type Way } from '../../measure/foresee/fitness.ts'
import { printLimits } from '../../measure/reading/print.ts'
import type { Quantity } from '../../measure/reading/quantity.ts'
import { byMeter, settings } from '../../measure/reading/settings.ts'
import { fitnessFor } from '../measuring/foreseen.ts'
import type { Asked } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { conditionsAt } from '../standing/way/still-hot.ts'
import { meterWords } from '../words/names.ts'
import type { NextStep } from '../words/next-step.ts'
import { listed, lowerFirst } from '../words/sentences.ts'
import { purposeOf } from './form.ts'
import type { MeterView } from './view.ts'

/** The meter of the job, or the gauge that reads it, beside the limits of a check, and what it can tell there. */
export function presentCheckMeter(
  input: Standing & Asked,
  card: CheckCard,
  measurand: Measurand,
): MeterView {
  const { meter, job, zeroRefused } = input
  const href = meterHref(input, card)
  const { limits, quantity } = measurand
  return {
    ...(byMeter(quantity.setting) && {
      at: {
        says: quantity.touches.leads ? meterWords(meter) : meter.name,
        href,
        change: 'Meter and leads',
      },
    }),
    ...(leadsMatter(limits, quantity) &&
      meter.zero === undefined && {
        zero: {
          says: 'The leads count here: first hold the probes together and enter what the meter shows.',
          action: `/jobs/${job.id}/zeros`,
          typed: zeroRefused?.typed ?? '',
          ...(zeroRefused && { problem: zeroRefused.sentence }),
        },
      }),
    ...unfit(input, card, measurand),
  }
}

/** The page of the meter, which leads back to this check as it stands here. */
function meterHref(input: Standing & Asked, { id }: CheckCard): string {
  const purpose = purposeOf(input, id)
  const name = { reading: 'check', take: 'take', correction: 'correct' }[purpose]
  return `/jobs/${input.job.id}/meter?${name}=${encodeURIComponent(id)}`
}

function unfit(
  input: Standing & Asked,
  card: CheckCard,
  measurand: Measurand,
): Pick<MeterView, 'unfit'> {
  const { folded, meter, asItStands } = input
  const { readings } = folded
  const conditions = conditionsAt(asItStands, card, folded.conditions)
  const fit = fitnessFor(measurand, meter, conditions, readings.get(card.id)?.manner)
  const says = unfitSentence(fit, measurand)
  if (says === undefined) return {}
  return { unfit: { says, ways: (fit?.ways ?? []).flatMap((way) => wayWords(way, input, card)) } }
}

/** What a meter cannot tell of these limits; nothing where it is fit. */
export function unfitSentence(fit: Fitness | null, measurand: Measurand): string | undefined {
  if (fit === null)
    return `This ${settings[measurand.quantity.setting].instrument} has no range for that.`
  return fit.kind === 'fit' ? undefined : fitnessSentence(fit, measurand)
}

/** "This meter can only tell open from not open here." */
export function fitnessSentence({ kind, groups }: Fitness, measurand: Measurand): string {
  const { quantity, limits } = measurand
  const within = printLimits(limits, quantity.unit)
  const told = toldApart(groups, quantity)
  const here = `This ${settings[quantity.setting].instrument}`
  if (kind === 'coarse') {
    return `${here} can prove only values well inside ${within} to be good${told ? `; it ${told}` : ''}.`
  }
  if (!told && quantity.overRange !== null) {
    return `${here} cannot prove here that a part lies within ${within}: only what is far off shows.`
  }
  return told
    ? `${here} ${told} here. No reading of it proves that a part lies within ${within}.`
    : `${here} can tell nothing here: whatever it shows, the part may lie within ${within} or not.`
}

/**
 * "can only tell open from not open", "cannot tell short, low and in range apart"; empty where all or
 * none of the bands are told apart.
 */
function toldApart(groups: Fitness['groups'], quantity: Quantity): string {
  const names = groups.map((group) => group.map((band) => bandName(band, quantity)))
  if (groups.length < 2 || names.every(({ length }) => length === 1)) return ''
  const alone = names.find(({ length }) => length === 1)
  if (names.length === 2 && alone) return `can only tell ${alone[0]} from not ${alone[0]}`
  const mixed = names.filter(({ length }) => length > 1).map((group) => listed(group))
  return `cannot tell ${mixed.join(' apart, nor ')} apart`
}

function finerWords({ measurand }: CheckCard): string {
  const { instrument } = settings[measurand?.quantity.setting ?? 'resistance']
  return measurand?.quantity.corrections.includes('next blade')
    ? `Take a ${instrument} with finer steps.`
    : `Take a ${instrument} with a finer last digit.`
}

function wayWords(way: Way, input: Standing & Asked, card: CheckCard): NextStep | NextStep[] {
  const { job, kase, folded } = input
  switch (way) {
    case 'zero the leads':
      return {
        says: 'Zero the leads: hold the probes together and enter what the meter shows.',
        way: { href: meterHref(input, card), text: 'Zero the leads' },
      }
    case 'measure the temperature':
      return { says: 'Measure the temperature of the part, and enter it with the reading.' }
    case 'measure the speed':
      return { says: 'Read the speed off a counter, and enter it with the reading.' }
    case 'finer meter':
      return { says: finerWords(card) }
    case 'four-wire':
      return {
        says: 'Measure with four wires: two carry the current, the other two read at the part itself.',
      }
    case 'known current and millivolts':
      return {
        says: 'Send a known current through it, 1 A or so, and read the millivolts across it: millivolts by amperes are milliohms.',
      }
    case 'another quantity': {
      const { quantities = [], says } = card.measurand?.quantity.instead ?? {}
      const instead = [...kase.checks.values()].find(
        ({ id, part, measurand }) =>
          part === card.part &&
          measurand !== undefined &&
          quantities.includes(measurand.quantity.id) &&
          !folded.readings.has(id),
      )
      if (instead === undefined) return []
      return {
        says: `Check its ${says} instead: ${lowerFirst(instead.title)}.`,
        way: {
          href: `/jobs/${job.id}?check=${encodeURIComponent(instead.id)}`,
          text: 'Make that check',
        },
      }
    }
    case 'active adaptor':
      return { says: 'Use an adaptor with a supply of its own, which loses nothing to a diode.' }
  }
}
