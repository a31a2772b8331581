import type { CheckCard } from '../../../knowledge/case.ts'
import { fades, hinders } from '../../../knowledge/instantiate/setup-cards.ts'
import { fill, fillingsOf, sentencesIn } from '../../../knowledge/instantiate/words.ts'
import type { Knowledge } from '../../../knowledge/knowledge.ts'
import type { Machine } from '../../../knowledge/schema/machine.ts'
import type { Standing } from '../../standing/standing.ts'
import { triedLater } from '../../standing/way/put-back.ts'
import { sentence } from '../../words/sentences.ts'
import { linesOf } from '../saying.ts'
import type { Line } from '../view.ts'

/** How the stop is tried: at the first start since its circuit was apart, which may come many checks later. */
export function stopToTry({ job, kase }: Pick<Standing, 'job' | 'kase'>): Line[] {
  const { stop } = kase.machine
  return stop && isUntried(job, kase) ? linesOf('try the stop', [sentence(stop.try)]) : []
}

/**
 * The same before it is started, with what comes after for an engine that has just died of it, unless that is said next.
 *
 * @param next what is said next, up to the start and after it
 */
export function stopAtStart(input: Pick<Standing, 'job' | 'kase'>, next: readonly Line[]): Line[] {
  const how = stopToTry(input)
  if (how.length === 0) return []
  const run = fill('{run}', fillingsOf(input.kase.machine)).toLowerCase()
  return next.some(({ says }) => says.toLowerCase().includes(run)) ? how : [...how, ...onceStopped]
}

/** The same right after it was started, if it runs. */
export const stopNow = (input: Pick<Standing, 'job' | 'kase'>): Line[] =>
  stopToTry(input).length > 0 ? onceItRuns(input.kase.machine) : []

/** How the stop of this machine is tried, if it runs by now. */
export const onceItRuns = ({ stop }: Pick<Machine, 'stop'>): Line[] =>
  stop ? [...linesOf('try the stop', [ifItRuns, sentence(stop.try)]), ...onceStopped] : []

/**
 * The same right after a check has it turned over, if it runs: hands may go to the machine before that, and it need not
 * run by then.
 */
export function stopAsItTurns(input: Pick<Standing, 'job' | 'kase'>): Line[] {
  const how = stopToTry(input)
  return how.length > 0 ? [...linesOf('try the stop', [ifItRuns]), ...how] : []
}

/** Where among these it is turned over in so many words; -1 where it is not. */
export function turnedAt(machine: Machine, says: readonly Line[]): number {
  const turn = fill('{turn}', fillingsOf(machine)).toLowerCase()
  return says.findIndex((line) => line.says.toLowerCase().includes(turn))
}

const ifItRuns = 'If it runs now, this start counts as its next one: do at once what I say.'

const onceStopped: readonly Line[] = linesOf('try the stop', [
  'Then set it for work and start it again.',
])

/**
 * What is said of a check, where its last words were on how the stop is tried: how comes at that start, when somebody
 * can do it.
 */
export function stopLater(phone: readonly string[], { stop }: Machine): string[] {
  const how = stop ? sentencesIn(stop.try) : []
  const others = phone.filter((says) => !how.includes(says))
  return others.length < phone.length ? [...others, triedLater] : others
}

/** The engine is started for it: by its own steps, or to be run hot first. */
const isStarted = ({ engine, setups, asked }: CheckCard): boolean =>
  !asked && (engine === 'running' || setups.some(fades))

/**
 * It is started for the check, or may start: it is turned over with nothing apart or fitted that keeps it from running,
 * and is not said to stand at OFF all the while.
 */
export const startsIt = (
  card: CheckCard,
  { setups: { setups } }: Knowledge,
  machine: Machine,
): boolean =>
  isStarted(card) ||
  (card.engine === 'cranking' &&
    !staysOff(card, machine) &&
    !card.setups.some(({ id }) => {
      const kit = setups[id]
      return kit !== undefined && hinders(kit, ['running'])
    }))

/** It is set so that it cannot start, and not for work after that. */
function staysOff({ phone }: CheckCard, machine: Machine): boolean {
  const [off = '', run = ''] = ['{off}', '{run}'].map((name) =>
    fill(name, fillingsOf(machine)).toLowerCase(),
  )
  const says = phone.join(' ').toLowerCase()
  return says.includes(off) && !says.includes(run)
}

function isUntried({ events }: Standing['job'], { checks }: Standing['kase']): boolean {
  // With this complaint, whoever tries again has it running.
  const mayRun = [...checks.values()].some(({ engine }) => engine === 'running')
  const partsTheStop = (check: string | null | undefined): boolean =>
    checks.get(check ?? '')?.setups.some(({ stopOff }) => stopOff) ?? false
  let untried = false
  // As it was before something was put right or a way home tried, should that be taken back.
  let before = false
  for (const { event } of events) {
    switch (event.kind) {
      case 'reading':
      case 'take': {
        const card = checks.get(event.check)
        if (partsTheStop(event.check)) untried = true
        else if (card && isStarted(card)) untried = false
        break
      }
      case 'tried':
        // It is tried as soon as the engine runs, and it did not.
        if (event.takenBack) untried ||= before
        else {
          before = untried
          if (event.leaves) untried = true
          else if (event.helped) untried = false
        }
        break
      case 'conditions':
      case 'correction':
      case 'withdrawn':
      case 'accepted':
        if (partsTheStop(event.begun)) untried = true
        break
      case 'skipped':
        if (event.isBegun !== false && partsTheStop(event.check)) untried = true
        break
      case 'cut off':
        if (event.leaves || partsTheStop(event.at)) untried = true
        break
      case 'proved':
        untried = false
        break
      case 'put right':
        if (event.came === 'taken back') untried ||= before
        else before = untried
        if (event.came === 'still there' && mayRun) untried = false
        break
    }
  }
  return untried
}
