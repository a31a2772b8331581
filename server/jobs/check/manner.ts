import type { CheckCard } from '../../knowledge/case.ts'
import { temperatureOf, usualWarmth } from '../measuring/warmth.ts'
import type { PartWarmth } from '../record/events.ts'
import type { Asked } from '../standing/asked.ts'
import type { Standing } from '../standing/standing.ts'
import { degrees, signed } from '../words/sentences.ts'
import type { ReadingForm } from './view.ts'

/** What else the form asks of a reading: how warm the part is, and how fast it turned. */
export function presentManner(
  { folded, refused }: Standing & Asked,
  { id, measurand }: CheckCard,
): Pick<ReadingForm, 'warmth' | 'rpm'> {
  if (measurand === undefined) return {}
  const { corrections } = measurand.quantity
  const { conditions } = folded
  const tried = refused?.check === id ? refused : undefined
  const manner = folded.readings.get(id)?.manner
  const { warmth = usualWarmth(conditions, measurand), rpm } = manner ?? {}
  const said = warmth.kind === 'measured' ? signed(warmth.celsius) : ''
  const speed = rpm === undefined ? '' : String(rpm)
  return {
    ...(corrections.includes('copper') &&
      measurand.material !== 'not copper' && {
        warmth: {
          choices: kinds.map((kind) => ({
            value: kind,
            says: warmthWords(kind, conditions),
            chosen: kind === (tried?.warmth || warmth.kind),
          })),
          celsius: tried?.celsius ?? said,
        },
      }),
    ...(corrections.includes('speed') &&
      measurand.rpm !== undefined && {
        rpm: {
          value: tried?.rpm ?? speed,
          hint: `The limits hold at ${measurand.rpm}\u00a0rpm. Leave it empty if nobody read it.`,
        },
      }),
  }
}

const kinds = ['as the air', 'cold-soaked', 'running hot', 'measured'] as const

function warmthWords(
  kind: PartWarmth['kind'],
  conditions: Parameters<typeof temperatureOf>[1],
): string {
  if (kind === 'measured') return 'Measured, in °C:'
  const { celsius, halfWidth } = temperatureOf({ kind }, conditions)
  const about = `${degrees(celsius)}, give or take ${halfWidth}`
  return { 'as the air': 'As the air', 'cold-soaked': 'Cold-soaked', 'running hot': 'Running hot' }[
    kind
  ].concat(`: ${about}`)
}
