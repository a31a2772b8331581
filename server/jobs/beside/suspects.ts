import { suspects } from '../../diagnosis/belief/suspects.ts'
import type { Suspect } from '../../diagnosis/model/walk.ts'
import type { Standing } from '../standing/standing.ts'
import { suspectName } from '../words/names.ts'
import { counted, percent, upperFirst } from '../words/sentences.ts'
import type { SuspectRow, SuspectsView } from './view.ts'

/** This many of the likeliest are shown, but of those below the share only the first few. */
const shown = { most: 8, few: 3, share: 0.01 }

/** As much of where a job stands as its suspects depend on. */
interface Suspected {
  readonly kase: Standing['kase']
  readonly walk: Pick<Standing['walk'], 'suspects'>
}

export function presentSuspects({ kase, walk }: Suspected): SuspectsView {
  const before = new Map(
    suspects(
      kase.model,
      kase.model.cutSets.map(({ prior }) => prior),
    ).map(({ part, probability }) => [part, probability]),
  )
  const count = walk.suspects.filter(
    ({ probability }, i) => i < shown.few || (i < shown.most && probability >= shown.share),
  ).length
  const rest = walk.suspects.slice(count)
  return {
    rows: walk.suspects.slice(0, count).map(({ part, probability }): SuspectRow => {
      const start = before.get(part) ?? 0
      return {
        name: upperFirst(suspectName(kase, part)),
        percent: percent(probability),
        before: percent(start),
        width: Math.round(probability * 100),
        beforeAt: Math.round(start * 100),
      }
    }),
    rest: restWords(rest),
  }
}

function restWords(rest: readonly Suspect[]): string {
  const [first] = rest
  if (first === undefined) return ''
  const most = first.probability < shown.share ? '' : ' or less'
  return `${counted(rest.length, 'other part')}, ${percent(first.probability)}${most}.`
}
