import { parseReading } from '../../measure/reading/parse.ts'
import { quantities } from '../../measure/reading/quantities.ts'

/** More than this is no pair of leads: something else is in the way. */
const worstLeads = 2

/** What the leads read, in Ω; null where nothing was typed; a sentence where it is no such reading. */
export function readZero(text: string): number | null | string {
  if (text === '') return null
  const parsed = parseReading(text, quantities.resistance)
  // What a part may read instead is nothing to say of leads, which nobody unplugs.
  if (!parsed.ok) return /^[-−–]/.test(text) ? belowNothing : noNumber
  const { reading } = parsed
  if (reading.kind === 'value' && reading.value <= worstLeads) return reading.value
  return 'Leads read well below 2 Ω: press the probes together, look at the plugs, and read again.'
}

const belowNothing =
  'Leads never read below 0 Ω: press the probes together, let the reading settle, and type it without a sign, such as 0.3.'
const noNumber =
  'Type one number in ohms, what the meter shows with the probes held together, such as 0.3.'
