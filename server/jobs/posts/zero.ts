import { parseReading } from '../../measure/reading/parse.ts'
import { quantities } from '../../measure/reading/quantities.ts'

/** More than this is no pair of leads: something else is in the way. */
const worstLeads = 10

/** What the leads read, in Ω; null where nothing was typed; a sentence where it is no such reading. */
export function readZero(text: string): number | null | string {
  if (text === '') return null
  const parsed = parseReading(text, quantities.resistance)
  if (!parsed.ok) return parsed.problem
  const { reading } = parsed
  if (reading.kind === 'value' && reading.value <= worstLeads) return reading.value
  return 'Leads read well below 10 Ω: press the probes together, look at the plugs, and read again.'
}
