import type { ConfirmedRepair } from '../jobs/record/confirmed.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { machineName } from '../knowledge/machine-name.ts'
import { counted } from '../web/words.ts'
import type { RatesPage } from './page.ts'
import { presentCalibration } from './present-calibration.ts'
import { meaning } from './words.ts'

/** The page of all families. */
export function presentRatesPage(
  knowledge: Knowledge,
  repairs: readonly ConfirmedRepair[],
): RatesPage {
  const counting = repairs.filter(({ leftOut }) => leftOut === null)
  const machines = [...knowledge.machines.values()]
  const lost = counting.filter(({ machine }) => !knowledge.machines.has(machine)).length
  const families = [...new Set(machines.map(({ family }) => family))]
  return {
    title: 'Base rates',
    lead: leadWords(counting.length, repairs.length - counting.length, lost),
    meaning,
    families: families.map((name) => {
      const sheets = machines.filter(({ family }) => family === name)
      const count = counting.filter(({ machine }) => sheets.some(({ id }) => id === machine)).length
      return {
        name,
        says: count === 0 ? 'As in the tables' : `${counted(count, 'confirmed repair')}`,
        machines: sheets.map((sheet) => ({ href: `/rates/${sheet.id}`, text: machineName(sheet) })),
      }
    }),
    calibration: presentCalibration(counting),
  }
}

function leadWords(count: number, leftOut: number, lost: number): string {
  if (count + leftOut === 0) {
    return 'No repair has been confirmed yet: every rate is that of the tables.'
  }
  const sentences = [
    `${counted(count, 'confirmed repair')} ${count === 1 ? 'counts' : 'count'}.`,
    ...(leftOut === 0 ? [] : [`${leftOut} ${leftOut === 1 ? 'is' : 'are'} left out.`]),
    ...(lost === 0
      ? []
      : [
          `Of those, ${lost} ${lost === 1 ? 'is' : 'are'} of machines that are no longer among the sheets, and ${lost === 1 ? 'moves' : 'move'} nothing.`,
        ]),
  ]
  return sentences.join(' ')
}
