import { cautionCards } from '../../../knowledge/instantiate/caution-cards.ts'
import { fillAll, fillingsOf } from '../../../knowledge/instantiate/words.ts'
import type { Asked } from '../../standing/asked.ts'
import type { Standing } from '../../standing/standing.ts'
import { putBackSentences } from '../../standing/way/put-back.ts'
import { withRenewed } from '../../words/cautions/renewed.ts'
import { backAfterCut, coversOn, cutOffAction, endOfBegun } from '../cut-off.ts'
import { heardOnCall } from '../heard.ts'
import { midway } from '../mending/mending.ts'
import { cautionLines, linesOf, saying } from '../saying.ts'
import { offFirst } from '../start/off-first.ts'
import { putTogether } from '../start/put-together.ts'
import { heldOnce, holdFirst, stopFirst } from '../start/stop-first.ts'
import { onceItRuns, stopNow } from '../start/stop-to-try.ts'
import type { HomePage } from '../view.ts'
import { butForARun } from './but-for-a-run.ts'
import { stepsOf, type Way } from './way-steps.ts'
import { dangerOf } from './ways.ts'

/** Labels of what hands do at the machine. */
const isDone: ReadonlySet<string> = new Set(['put back first', 'do'])

/** One way home sentence by sentence: what goes back, what it takes, how it is started, and whether they can go. */
export function tryingView(
  input: Standing & Asked,
  id: string,
  way: Way,
): NonNullable<HomePage['trying']> {
  const { job, folded, kase, knowledge, line = 1 } = input
  const { says, cautions } = way
  const steps = stepsOf(way, knowledge.home)
  const danger = dangerOf(way, kase)
  const fillings = fillingsOf(kase.machine)
  const ofWay = cautionCards(cautions, knowledge, kase.machine)
  const isStarted = steps.start.length > 0
  const cards = isStarted ? withRenewed(input, ofWay) : ofWay
  const { asked, stands } = midway(input)
  const [back, covers] = putTogether({ kase, knowledge, asItStands: stands }, asked)
  // What the way takes apart is not joined for it.
  const first = back.filter(({ setup }) => !way.leaves?.includes(setup.id))
  const covered = [...putBackSentences(covers, kase.machine, 'by phone'), ...steps.covered]
  const goesBack = folded.cutOff
    ? backAfterCut(input, folded.cutOff, way.leaves)
    : [
        ...endOfBegun(input, stands, asked),
        ...putBackSentences(first, kase.machine, 'by phone'),
        ...coversOn(input, stands),
      ]
  const lines = [
    ...stopFirst(input),
    ...linesOf('first', folded.conditions.afloat ? knowledge.home.afloat.first : []),
    ...cautionLines(cards, heardOnCall(input)),
    ...heldOnce(holdFirst(input), [
      ...offFirst(
        input,
        { make: [], still: [] },
        linesOf('put back first', butForARun(goesBack, knowledge.home, way.opens ?? [])),
      ),
      // It may run already.
      ...(isStarted ? [] : linesOf('put back first', covered)),
      // What can go wrong is heard before it is done.
      ...linesOf('mind', [danger]),
      ...linesOf('do', fillAll(steps.before, fillings)),
      // What a cover hides is seen to before it is on.
      ...(isStarted
        ? linesOf('before it runs', [knowledge.home.whole, knowledge.home.choke, ...covered])
        : []),
      ...linesOf('do', fillAll(steps.start, fillings)),
      ...(way.triesStop ? onceItRuns(kase.machine) : way.leaves ? [] : stopNow(input)),
    ]),
    // How they go is said once it is known that it runs.
    { says: 'Does it run, and can you go?', label: 'ask' },
  ]
  const said = saying(lines, line, (number) => `/jobs/${job.id}/home?way=${id}&line=${number}`)
  return {
    id,
    says,
    danger,
    saying: said,
    begun: (folded.cutOff ? folded.cutOff.at : asked) ?? '',
    isBegun: lines.slice(0, said.at + 1).some(({ label }) => isDone.has(label)),
    action: `/jobs/${job.id}/tries`,
    cutOff: cutOffAction(job),
  }
}
