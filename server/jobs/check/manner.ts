import type { CheckCard } from '../../knowledge/case.ts'
import { followsWarmth } from '../../measure/correct/follows-warmth.ts'
import { temperatureOf, usualWarmth } from '../measuring/warmth.ts'
import type { Conditions, Manner, PartWarmth } from '../record/events.ts'
import type { Refused } from '../standing/asked.ts'
import { degrees, signed } from '../words/sentences.ts'
import type { ReadingForm } from './view.ts'

/** What was said of it before: with the reading that stands, or in a form that came back. */
interface Said {
  readonly manner?: Manner | undefined
  readonly tried?: Pick<Refused, 'warmth' | 'celsius' | 'rpm'> | undefined
  /** The engine has run since somebody said how things stand. */
  readonly hasRun?: boolean
}

/** What else the form asks of a reading: how warm the part is, and how fast it turned. */
export function presentManner(
  { measurand }: Pick<CheckCard, 'measurand'>,
  conditions: Conditions,
  { manner, tried, hasRun = false }: Said,
): Pick<ReadingForm, 'warmth' | 'rpm'> {
  if (measurand === undefined) return {}
  const { corrections } = measurand.quantity
  const { warmth = usualWarmth(conditions, measurand), rpm } = manner ?? {}
  const said = warmth.kind === 'measured' ? signed(warmth.celsius) : ''
  const speed = rpm === undefined ? '' : String(rpm)
  return {
    ...(followsWarmth(measurand) && {
      warmth: {
        choices: kinds.map((kind) => ({
          value: kind,
          says: warmthWords(kind, conditions),
          chosen: kind === (tried?.warmth || warmth.kind),
        })),
        celsius: tried?.celsius ?? said,
        ...(hasRun && conditions.engine !== 'hot' && { hint: ranWords }),
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

const ranWords = 'The engine has run since. Lay a hand on the part: it may be warmer than the air.'

const kinds = ['as the air', 'cold-soaked', 'hand-warm', 'running hot', 'measured'] as const

function warmthWords(kind: PartWarmth['kind'], conditions: Conditions): string {
  if (kind === 'measured') return 'Measured, in °C:'
  const { celsius, halfWidth } = temperatureOf({ kind }, conditions)
  const about = `${degrees(celsius)}, give or take ${halfWidth}`
  return `${kindWords[kind]}: ${about}`
}

const kindWords: Readonly<Record<Exclude<PartWarmth['kind'], 'measured'>, string>> = {
  'as the air': 'As the air',
  'cold-soaked': 'Cold-soaked',
  'hand-warm': 'Warm to the hand',
  'running hot': 'Running hot',
}
