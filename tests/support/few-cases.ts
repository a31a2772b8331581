import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { shippedKnowledge } from './knowledge.ts'

const quickest = ['lamps-too-bright', 'will-not-stop']

/** The shipped knowledge with its quickest complaints only, and more where one asks for them: new each time, so that nothing is known of it. */
export function fewCases(...more: readonly string[]): Knowledge {
  const few = [...quickest, ...more]
  const shipped = shippedKnowledge()
  const complaints = new Map([...shipped.complaints].filter(([id]) => few.includes(id)))
  if (complaints.size !== few.length) throw new Error(`The shipped trees lack one of ${few}.`)
  return { ...shipped, complaints }
}
