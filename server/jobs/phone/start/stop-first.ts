import type { Standing } from '../../standing/standing.ts'
import { linesOf } from '../saying.ts'
import type { Line } from '../view.ts'

export const stopIfItRuns = 'If it runs now, stop it first.'

/**
 * That it is stopped before hands go to it, where it may be running: it comes so, or was just tried. Nothing where no
 * check of the complaint has it run.
 */
export function stopFirst({ job, kase }: Pick<Standing, 'job' | 'kase'>): Line[] {
  const mayRun = [...kase.checks.values()].some(({ engine }) => engine === 'running')
  return mayRun && !isStopped(job, kase) ? linesOf('make ready', [stopIfItRuns]) : []
}

/** A check has had hands on it since it was last started, or came; one that has it run may end with it running. */
function isStopped({ events }: Standing['job'], { checks }: Standing['kase']): boolean {
  for (const { event } of events.toReversed()) {
    switch (event.kind) {
      case 'reading':
      case 'take': {
        const card = checks.get(event.check)
        if (!card?.asked) return card?.engine !== 'running'
        break
      }
      case 'conditions':
      case 'correction':
      case 'withdrawn':
      case 'accepted': {
        const begun = checks.get(event.begun ?? '')
        if (event.mending || (begun && !begun.asked && begun.engine !== 'stopped')) return false
        break
      }
      case 'cut off':
        if (event.way !== undefined) return false
        break
      case 'put right':
      case 'tried':
      case 'proved':
        return false
    }
  }
  return false
}
