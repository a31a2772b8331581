import type { StoredJob } from './events.ts'

/**
 * Who was the technician at each event, in the order of the events; empty where nobody was ever named. Whoever is named
 * first has done what came before as well.
 */
export function technicians(events: StoredJob['events']): readonly string[] {
  const named = events.map(({ event }) => (event.kind === 'particulars' ? event.technician : ''))
  let now = named.find((name) => name !== '') ?? ''
  return named.map((name) => {
    now = name || now
    return now
  })
}
