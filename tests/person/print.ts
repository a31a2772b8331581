import type { Fleet } from './fleet.ts'
import { type IncidentKind, incidentKinds, type JobRecord } from './record.ts'

/** Prints what came of a fleet: by complaint and in all, what the pages brought about, and what chances were worth. */
export function printFleet(fleet: Fleet, records: readonly JobRecord[]): void {
  console.log(`\n== ${records.length} jobs, seed ${fleet.seed}, weather: ${fleet.climate}`)
  printTable(records)
  printIncidents(records)
  printBins(records)
}

/** One job, page by page. */
export function printJob(record: JobRecord): void {
  const { seed, complaint, machine, place, hidden } = record
  console.log(
    `\njob ${seed}: ${complaint} on ${machine}, ${place}; hidden: ${hidden.join(' + ') || 'nothing in this tree'}`,
  )
  for (const line of record.said) console.log(line)
  console.log(
    `   => ${record.outcome}, ${record.end}, ${record.checks} checks, ${record.minutes.toFixed(0)} min`,
  )
}

function printTable(records: readonly JobRecord[]): void {
  console.log('                          jobs  right  wrong   dear  undec  mended  steps   min')
  const complaints = [...new Set(records.map(({ complaint }) => complaint))].sort()
  for (const complaint of complaints) {
    row(
      complaint,
      records.filter((record) => record.complaint === complaint),
    )
  }
  for (const place of ['bench', 'trailside']) {
    const there = records.filter((record) => record.place === place)
    if (there.length > 0) row(place, there)
  }
  row('all', records)
}

function row(name: string, records: readonly JobRecord[]): void {
  const share = (what: (record: JobRecord) => boolean) =>
    `${((100 * records.filter(what).length) / records.length).toFixed(0)}%`
  const mean = (what: (record: JobRecord) => number) =>
    (records.reduce((sum, record) => sum + what(record), 0) / records.length).toFixed(1)
  const columns = [
    String(records.length).padStart(5),
    ...[
      share(({ outcome }) => outcome === 'right'),
      share(({ outcome }) => outcome === 'wrong'),
      share(({ dear }) => dear),
      share(({ outcome }) => outcome === 'undecided'),
    ].map((text) => text.padStart(7)),
    share(({ end }) => end === 'mended').padStart(8),
    mean(({ checks }) => checks).padStart(7),
    mean(({ minutes }) => minutes).padStart(7),
  ]
  console.log(`${name.padEnd(24)} ${columns.join('')}`)
}

function printIncidents(records: readonly JobRecord[]): void {
  console.log('in a hundred jobs:')
  for (const kind of Object.keys(incidentKinds) as IncidentKind[]) {
    const count = records.reduce(
      (sum, { incidents }) => sum + incidents.filter((each) => each.kind === kind).length,
      0,
    )
    console.log(
      `  ${((100 * count) / records.length).toFixed(0).padStart(5)}  ${kind}: ${incidentKinds[kind]}`,
    )
  }
}

const bins = [
  [0, 0.895],
  [0.895, 0.945],
  [0.945, 0.99],
  [0.99, 1],
] as const

function printBins(records: readonly JobRecord[]): void {
  console.log('stated chance of a named part, and the share that was right:')
  for (const [from, to] of bins) {
    const named = records.filter(
      ({ stated, named }) => named?.length && stated !== null && stated >= from && stated < to,
    )
    if (named.length === 0) continue
    const right = named.filter(({ outcome }) => outcome === 'right').length / named.length
    const stated = named.reduce((sum, record) => sum + record.stated!, 0) / named.length
    console.log(
      `  ${from.toFixed(2)} to ${to.toFixed(2)}: ${String(named.length).padStart(4)} named, said ${stated.toFixed(3)}, right ${right.toFixed(3)}`,
    )
  }
}
