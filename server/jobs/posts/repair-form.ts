import type { Case } from '../../knowledge/case.ts'
import { numberIn, textOf } from '../../web/fields.ts'
import type { Repaired } from '../record/events.ts'
import { notListed, type RepairForm, type RepairProblem } from '../standing/asked.ts'

/** Longer than what people write on a job card, in characters. */
const longest = { cause: 200, note: 500, price: 40 } as const
/** A week of work. */
const mostMinutes = 6000

export function repairFormFrom(body: unknown): RepairForm {
  const field = (name: string) => textOf(body, name).trim()
  return {
    parts: field('parts'),
    cause: field('cause').replace(/\s+/g, ' '),
    fault: field('fault'),
    note: field('note'),
    price: field('price'),
    minutes: field('minutes'),
  }
}

export type ReadRepair =
  | { readonly ok: true; readonly repaired: Repaired }
  | { readonly ok: false; readonly problem: RepairProblem }

/**
 * What a form says was repaired, or the field that is wrong and what to do about it.
 *
 * @param currency what is written after a price that is a number only
 */
export function readRepair(
  { parts, faults }: Case,
  form: RepairForm,
  currency: string,
): ReadRepair {
  const isListed = form.parts !== notListed
  const named = isListed ? form.parts.split('+') : []
  if (!named.every((part) => parts.has(part))) {
    return wrong('parts', 'Choose the part that was repaired.')
  }
  if (!isListed && !/\p{L}/u.test(form.cause)) {
    return wrong('cause', 'Write in a few words what it was: what was wrong, and where.')
  }
  if (!isListed && form.cause.length > longest.cause) {
    return wrong('cause', `Keep what it was to ${longest.cause} characters; the note takes more.`)
  }
  const fault = faults.get(form.fault)
  if (form.fault !== '' && (fault === undefined || !named.includes(fault.part))) {
    return wrong('fault', 'Choose one of the failures of this part, or leave it open.')
  }
  if (form.note.length > longest.note) {
    return wrong('note', `Keep the note to ${longest.note} characters.`)
  }
  if (form.price.length > longest.price) {
    return wrong('price', `Keep the price to ${longest.price} characters.`)
  }
  if (/^[-−–]/.test(form.price)) {
    return wrong('price', 'Write the price without a sign, or leave it empty.')
  }
  if (form.price !== '' && !/\d/.test(form.price)) {
    return wrong('price', 'Write the price as a number, such as 24.50, or leave it empty.')
  }
  const minutes = numberIn(form.minutes.replace(/\s*min(utes)?$/i, ''))
  if (form.minutes !== '' && (minutes === null || minutes < 0 || minutes > mostMinutes)) {
    return wrong('minutes', 'Write the time in minutes, such as 25, or leave it empty.')
  }
  return {
    ok: true,
    repaired: {
      parts: named,
      ...(!isListed && { cause: form.cause }),
      ...(form.fault !== '' && { fault: form.fault }),
      ...(form.note !== '' && { note: form.note }),
      ...(form.price !== '' && { price: priceIn(form.price, currency) }),
      ...(minutes !== null && form.minutes !== '' && { minutes }),
    },
  }
}

const priceIn = (typed: string, currency: string): string =>
  currency !== '' && /^[\d.,'’\s]+$/.test(typed) ? `${typed} ${currency}` : typed

function wrong(field: keyof RepairForm, says: string): ReadRepair {
  return { ok: false, problem: { field, says } }
}
