import type { ConfirmedRepair } from '../jobs/record/confirmed.ts'
import { asWritten } from '../jobs/words/names.ts'
import { dateAndTime, jobNumber } from '../jobs/words/sentences.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { machineName, partNameOn } from '../knowledge/machine-name.ts'
import { textOfCause } from '../knowledge/rates/causes.ts'
import { type PresentRate, presentRates } from '../knowledge/rates/present.ts'
import type { Machine } from '../knowledge/schema/index.ts'
import { counted, listed, lowerFirst, upperFirst } from '../web/words.ts'
import { elsewhereWords } from './elsewhere-words.ts'
import type { LeaveForm, RateRow, RepairRow, SheetRatesPage } from './page.ts'
import { countWords, meaning, rateWords } from './words.ts'

/** The repairs of a machine's family, and what all repairs make of the rates on its sheet. */
export function presentSheetRates(
  knowledge: Knowledge,
  machine: Machine,
  repairs: readonly ConfirmedRepair[],
  leave: Omit<LeaveForm, 'action'>,
): SheetRatesPage {
  const counting = repairs.filter(({ leftOut }) => leftOut === null)
  const own = ofFamily(knowledge, machine, repairs)
  const here = own.filter(({ leftOut }) => leftOut === null)
  const rates = presentRates(knowledge, machine, counting)
  const rows = rates.map((rate) => presentRow(rate, here))
  const partsOf = ({ cause }: PresentRate) => cause.parts
  const kinds = rates.filter((rate, i) => i === 0 || rates[i - 1]?.cause.parts !== partsOf(rate))
  return {
    title: `Base rates of ${machineName(machine)}`,
    lead: leadWords(machine, here.length, counting.length - here.length),
    meaning,
    confirmed: rows.filter((_, i) => (rates[i]?.own ?? 0) > 0),
    parts: kinds.map((kind) => ({
      name: nameOf(kind),
      rows: rows.filter((_, i) => rates[i]?.cause.parts === partsOf(kind)),
    })),
    elsewhere: elsewhereWords(knowledge, machine, counting),
    repairs: listedOf(own).map((repair) => presentRepair(knowledge, machine, repair)),
    older: olderWords(own.length - listedOf(own).length),
    leave: { ...leave, action: `/rates/${machine.id}/left-out` },
  }
}

/** The confirmed repairs on machines of the same family, this one among them. */
export function ofFamily(
  { machines }: Knowledge,
  { family }: Machine,
  repairs: readonly ConfirmedRepair[],
): readonly ConfirmedRepair[] {
  return repairs.filter(({ machine }) => machines.get(machine)?.family === family)
}

function leadWords({ family }: Machine, here: number, others: number): string {
  if (here + others === 0)
    return `Nothing counts for ${family} yet: the rates are those of the tables.`
  return `${upperFirst(counted(here, 'confirmed repair'))} on ${family} ${here === 1 ? 'counts' : 'count'}, and ${others} on other families.`
}

/** The latest first; what is left out stays on the list, so that it can be taken in again. */
function listedOf(own: readonly ConfirmedRepair[]): readonly ConfirmedRepair[] {
  return own.filter(({ leftOut }, i) => leftOut !== null || i >= own.length - mostRepairs).reverse()
}

const mostRepairs = 50

const olderWords = (older: number): string =>
  older === 0 ? '' : `And ${older} before these; the form below takes the number of any of them.`

/** "Coil 1 and coil 2, each": parts that are alike have one rate. */
function nameOf({ cause: { parts } }: PresentRate): string {
  const [first, ...others] = parts.map(({ name }) => name)
  const names = upperFirst(listed([first ?? '', ...others.map(lowerFirst)]))
  return others.length === 0 ? names : `${names}, each`
}

function presentRow(rate: PresentRate, repairs: readonly ConfirmedRepair[]): RateRow {
  const { cause, own, others, now } = rate
  const name = textOfCause(cause)
  const those = repairs.filter(({ causes }) => causes.some((each) => textOfCause(each) === name))
  const shown = those.slice(-mostJobs).reverse()
  return {
    part: nameOf(rate),
    failure: upperFirst(cause.says),
    tables: rateWords(cause.rate),
    here: countWords(own),
    elsewhere: countWords(others),
    now: rateWords(now),
    jobs: shown.map(({ job }) => ({ href: `/jobs/${job}`, text: jobNumber(job) })),
    more: those.length > mostJobs ? `and ${those.length - mostJobs} before` : '',
  }
}

/** In a row of figures; all of them stand in the list of repairs. */
const mostJobs = 5

function presentRepair(
  knowledge: Knowledge,
  machine: Machine,
  { job, at, parts, cause, leftOut, machine: where }: ConfirmedRepair,
): RepairRow {
  const sheet = knowledge.machines.get(where)
  const names = parts.map((part) => partNameOn(sheet, part))
  const on = sheet && sheet !== machine ? ` (${machineName(sheet)})` : ''
  return {
    job: { href: `/jobs/${job}`, text: `No. ${jobNumber(job)}` },
    says: `${cause === undefined ? upperFirst(listed(names.map(lowerFirst))) : asWritten(cause)}${on}, proved ${dateAndTime(at)}`,
    leftOut,
    href:
      leftOut === null
        ? `/rates/${machine.id}?leave=${job}#leave`
        : `/rates/${machine.id}/taken-in`,
    number: job,
  }
}
