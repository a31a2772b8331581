import type { CheckCard } from '../../knowledge/case.ts'
import { numberIn } from '../../web/fields.ts'
import { usualWarmth } from '../measuring/warmth.ts'
import type { Conditions, Manner, PartWarmth } from '../record/events.ts'
import type { CheckForm, Understood } from './check-form.ts'

/** How warm the part was and how fast it turned, as the form says; what it leaves out is as usual. */
export function readManner(
  { measurand }: CheckCard,
  form: CheckForm,
  conditions: Conditions,
): Understood<{ manner: Manner }> {
  if (measurand === undefined) return { ok: true, manner: { warmth: usualWarmth(conditions) } }
  const warmth = readWarmth(form, usualWarmth(conditions, measurand))
  if (!warmth.ok) return warmth
  if (form.rpm === '') return { ok: true, manner: { warmth: warmth.warmth } }
  const rpm = numberIn(form.rpm.replace(/\s*(rpm|r\/min|1\/min)$/i, ''))
  if (rpm === null || rpm < 50 || rpm > 20_000) {
    return {
      ok: false,
      sentence: 'Write the speed in revolutions a minute, from 50 to 20000, or leave it empty.',
    }
  }
  return { ok: true, manner: { warmth: warmth.warmth, rpm } }
}

const warmthNames = ['as the air', 'cold-soaked', 'hand-warm', 'running hot'] as const

function readWarmth(
  { warmth, celsius }: CheckForm,
  usual: PartWarmth,
): Understood<{ warmth: PartWarmth }> {
  const kind = warmthNames.find((name) => name === warmth)
  // Who types a temperature has measured it, whatever the list beside it says.
  if (kind !== undefined && celsius === '') return { ok: true, warmth: { kind } }
  if (warmth !== 'measured' && celsius === '') {
    return { ok: true, warmth: usual }
  }
  const read = numberIn(celsius.replace(/\s*°?\s*C?$/i, ''))
  if (read !== null && read >= -50 && read <= 180) {
    return { ok: true, warmth: { kind: 'measured', celsius: read } }
  }
  return {
    ok: false,
    sentence: 'Write the temperature of the part in °C, from −50 to 180, or choose another way.',
  }
}
