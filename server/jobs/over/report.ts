import { notClearedFrom, sheetFor } from '../../knowledge/sheet/sheet.ts'
import { manyLevel } from '../../measure/decide/many.ts'
import { printLimits } from '../../measure/reading/print.ts'
import { unfitSentence } from '../check/meter.ts'
import { fitnessFor } from '../measuring/foreseen.ts'
import { comparedWords } from '../readings/corrected.ts'
import { isAskedFor, type OverRow } from '../standing/over-rows.ts'
import type { Standing } from '../standing/standing.ts'
import { readWords, verdictWord } from '../words/reading-words.ts'
import { counted, jobNumber, listed, percent, the, upperFirst } from '../words/sentences.ts'
import { twinSentences } from './twins.ts'
import type { OverRowView, PartReport, ReportView } from './view.ts'

/** What a check-over has come to so far, part by part, beside an earlier one where there is one. */
export function presentReport(
  input: Standing,
  rows: readonly OverRow[],
  before?: { readonly job: number; readonly rows: readonly OverRow[] },
): ReportView {
  const { job, kase, knowledge } = input
  const sheet = sheetFor(knowledge, kase.machine)
  const parts = [...new Set(rows.map(({ card }) => card.part ?? ''))]
  const reports = parts.map((part) =>
    partReport(
      input,
      kase.parts.get(part)?.name ?? part,
      rows.filter(({ card }) => card.part === part),
      (check) => sheet.readings.get(check)?.says ?? check,
      before?.rows ?? [],
    ),
  )
  const href = `/jobs/${job.id}/readings`
  return {
    says: cameTo(rows, reports),
    parts: reports,
    notShown: notShown(input, rows),
    sure: sureWords(rows),
    twins: twinSentences(input, rows),
    ...(before && {
      before: {
        href: `/jobs/${before.job}`,
        text: `No. ${jobNumber(before.job)}`,
      },
    }),
    ...(rows.some(isAskedFor) && {
      tableHref: `/jobs/${job.id}/table`,
    }),
    csvHref: `${href}.csv`,
    jsonHref: `${href}.json`,
  }
}

function cameTo(rows: readonly OverRow[], parts: readonly PartReport[]): string {
  const read = rows.filter(({ state }) => state !== 'to read').length
  const bad = parts.filter(({ kind }) => kind === 'bad')
  const unsure = parts.filter(({ kind }) => kind === 'unsure')
  const open = parts.filter(({ kind }) => kind === 'open')
  const names = (of: readonly PartReport[]) => listed(of.map(({ name }) => the(name)))
  const found = [
    ...(bad.length > 0 ? [`Bad: ${names(bad)}.`] : []),
    ...(unsure.length > 0 ? [`Cannot be told: ${names(unsure)}.`] : []),
    ...(read === rows.length && open.length > 0 ? [`Not all read: ${names(open)}.`] : []),
  ]
  if (read < rows.length)
    return [`${read} of ${counted(rows.length, 'reading')} made.`, ...found].join(' ')
  if (found.length === 0) return `All ${counted(rows.length, 'reading')} lie within their limits.`
  return found.join(' ')
}

function partReport(
  input: Standing,
  name: string,
  rows: readonly OverRow[],
  says: (check: string) => string,
  before: readonly OverRow[],
): PartReport {
  const bad = rows.find(({ state }) => state === 'bad')
  const unsure = rows.find(({ state }) => state === 'unsure')
  const open = rows.some(({ state }) => state === 'to read' || state === 'left out')
  const kind = bad ? 'bad' : unsure ? 'unsure' : open ? 'open' : 'good'
  const isBroken = rows.some(
    ({ state, judged }) => state === 'bad' && judged?.reading.kind === 'over',
  )
  const words = {
    bad: bad ? badWord(bad) : '',
    unsure: unsure ? unsureWord(input, unsure) : '',
    open: rows.every(({ state }) => state === 'to read') ? 'Not read yet' : 'Not all read',
    good: 'Good in all that was read',
  }
  return {
    name: upperFirst(name),
    word: words[kind],
    kind,
    rows: rows.map((row) => rowView(input, row, says(row.card.id), before, isBroken)),
  }
}

/** "Bad: open": the band, whatever a single reading by itself would be called. */
function badWord({ card, judged }: Pick<OverRow, 'card' | 'judged'>): string {
  const word = judged ? verdictWord(card, judged) : ''
  return word.startsWith('Bad') ? word : 'Bad'
}

/** The meter, where it cannot judge these limits; or that it is not sure yet. */
function unsureWord({ meter, folded }: Standing, { card, judged, again }: OverRow): string {
  const { measurand } = card
  if (again || judged?.reading.kind === 'over') return 'Not sure: touch again'
  const fit = fitnessFor(measurand, meter, folded.conditions)
  return unfitSentence(fit, measurand) ?? 'Not sure: touch again'
}

function rowView(
  input: Standing,
  row: OverRow,
  says: string,
  before: readonly OverRow[],
  isBroken: boolean,
): OverRowView {
  const { card, judged, state, again } = row
  const { measurand } = card
  const { unit } = measurand.quantity
  const address = `/jobs/${input.job.id}?`
  const id = encodeURIComponent(card.id)
  const earlier = before.find((each) => each.card.id === card.id)
  const ways = {
    read: { href: `${address}check=${id}`, text: 'Read it' },
    again: { href: `${address}take=${id}`, text: 'Touch again' },
    correct: { href: `${address}correct=${id}`, text: 'Correct' },
  }
  return {
    id: card.id,
    says: upperFirst(says),
    at: upperFirst(card.spot?.says ?? ''),
    limits: printLimits(measurand.limits, unit),
    read: judged ? readWords(card, judged) : '',
    compared: judged?.measured ? comparedWords(judged.measured, unit) : '',
    word: rowWord(row, isBroken),
    ...(earlier?.judged && { before: readWords(card, earlier.judged) }),
    way:
      judged === undefined || state === 'left out'
        ? ways.read
        : again || state === 'unsure'
          ? ways.again
          : ways.correct,
  }
}

/**
 * "Good", "Bad: open", "Not sure", "Left out: …"; empty for what is not read yet.
 *
 * @param isBroken the part is open: from one end only the piece before the break is seen
 */
export function rowWord({ state, skipped, card, judged }: OverRow, isBroken: boolean): string {
  switch (state) {
    case 'to read':
      return ''
    case 'left out':
      return `Left out: ${skipped}`
    case 'good':
      return isBroken && card.measurand.quantity.path === 'must not be'
        ? 'Good up to the break'
        : 'Good'
    case 'bad':
      return badWord({ card, judged })
    case 'unsure':
      return 'Not sure'
  }
}

function sureWords(rows: readonly OverRow[]): string {
  return `A part is called bad only where, over all ${counted(rows.length, 'reading')} together, the chance of calling a good one so stays at most ${percent(manyLevel)} (Holm’s rule).`
}

/** What the readings of good parts leave open; never a bare "passed". */
function notShown({ kase, knowledge }: Standing, rows: readonly OverRow[]): string[] {
  const { readings } = sheetFor(knowledge, kase.machine)
  const good = rows.filter(({ state }) => state === 'good')
  const chances = new Map<string, number>()
  for (const { card } of good) {
    const reading = readings.get(card.id)
    const inRange = card.outcomes.indexOf('in range')
    const own = reading?.failures.filter(({ part }) => part === card.part) ?? []
    for (const { says, row } of own) {
      const key = `${card.part}\n${says}`
      chances.set(key, (chances.get(key) ?? 1) * (row[inRange] ?? 1))
    }
  }
  const byFailure = new Map<string, string[]>()
  for (const [key, chance] of chances) {
    const [part = '', says = ''] = key.split('\n')
    if (chance < notClearedFrom) continue
    byFailure.set(says, [...(byFailure.get(says) ?? []), kase.parts.get(part)?.name ?? part])
  }
  return [...byFailure].map(([says, parts]) => `Whether ${listed(parts.map(the), 'or')} ${says}.`)
}
