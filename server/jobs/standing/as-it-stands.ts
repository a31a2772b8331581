import type { Stands } from '../../diagnosis/model/stands.ts'
import type { Case, CheckCard, SetupCard } from '../../knowledge/case.ts'
import { stays } from '../../knowledge/instantiate/setup-cards.ts'
import { answerGiven } from '../record/answer-given.ts'
import {
  asides,
  type Begun,
  type HalfDone,
  type JobEvent,
  type PutRight,
  type StoredJob,
} from '../record/events.ts'
import { noToolHere } from '../words/skip-reasons.ts'
import { fadingAfter } from './way/fading.ts'
import {
  onlyStop,
  perhapsAsBefore,
  perhapsBegun,
  perhapsHalfDone,
  perhapsOpened,
} from './way/perhaps.ts'
import { namesOf, without } from './way/setups-by-name.ts'
import { type AsItStands, together } from './way/state.ts'
import { inTheWay, wayTo } from './way/way-to.ts'

/**
 * The machine as it stands, from what happened on the job; it came in whole. The page of every check has
 * put back what the check forbids, and made ready what it needs. Nobody goes to the machine to correct,
 * withdraw or accept a reading, to answer a question or to write down a repair. To prove a repair,
 * everything was put together.
 */
export const asItStands = (kase: Pick<Case, 'checks'>, job: StoredJob): AsItStands =>
  replayed(kase, job).now

/** What may be apart where the line went dead last, or a way home was left half done, and nothing was taken since. */
export const beforeTheCut = (kase: Pick<Case, 'checks'>, job: StoredJob): AsItStands =>
  replayed(kase, job).beforeCut

function replayed(
  { checks }: Pick<Case, 'checks'>,
  { events }: StoredJob,
): { readonly now: AsItStands; readonly beforeCut: AsItStands } {
  let now = together
  let beforeProof = together
  let beforeMending = together
  let beforeTry = together
  let beforeCut = together
  for (const { event } of events) {
    if (isCut(event)) {
      const begun = midway(now, checks, { begun: event.at })
      beforeCut = perhapsOpened(
        halfDone(begun, setupsNamed(checks, event.leaves ?? [])),
        event.half,
      )
    } else if (!asides.includes(event.kind)) beforeCut = together
    switch (event.kind) {
      case 'reading':
      case 'take': {
        const card = checks.get(event.check)
        if (card && !card.asked) {
          now = answerGiven(card, event.touches)?.untouched
            ? perhapsBegun(now, card)
            : afterwards(now, card)
        }
        break
      }
      case 'skipped': {
        const card = checks.get(event.check)
        if (card && !card.asked) {
          const { isBegun = event.reason !== noToolHere } = event
          now = isBegun ? perhapsHalfDone(now, card) : perhapsBegun(now, onlyStop(card))
        }
        break
      }
      case 'back': {
        const back = new Set([event.setup])
        now = { ...now, setups: without(now.setups, back), unsure: without(now.unsure, back) }
        break
      }
      case 'proved':
        beforeProof = now
        now = together
        break
      case 'repair withdrawn':
        // A proof that was pressed by mistake has put nothing together.
        now = perhapsAsBefore(now, beforeProof)
        beforeProof = together
        break
      case 'repaired':
        beforeProof = together
        break
      case 'cut off':
        now = allBack(beforeCut)
        break
      case 'conditions':
        // Whoever takes it over was not there when it was left.
        if (event.begun !== undefined) now = midway(perhapsAsBefore(now, beforeCut), checks, event)
        // What an owner ran hot has cooled by the time that it stands somewhere else.
        if (event.begun !== undefined && event.conditions.who !== 'owner')
          now = { ...now, fading: [] }
        break
      case 'correction':
      case 'withdrawn':
      case 'accepted':
        now = midway(now, checks, event)
        break
      case 'put right':
        if (event.came === 'taken back') now = perhapsAsBefore(now, beforeMending)
        else {
          beforeMending = now
          now = afterPutRight(now, event.came, event.half)
        }
        break
      case 'tried':
        if (event.takenBack) {
          now = perhapsAsBefore(now, beforeTry)
          break
        }
        beforeTry = now
        now = event.brokenOff
          ? allBack(beforeCut)
          : {
              ...together,
              setups: setupsNamed(checks, event.leaves ?? []),
              ...(event.half?.opens && { open: event.half.opens }),
            }
        break
    }
  }
  return { now, beforeCut }
}

/** In the middle of a check all of it may be begun, and of putting something right what it puts back may be back. */
function midway(now: AsItStands, checks: Case['checks'], { begun, mending }: Begun): AsItStands {
  const card = checks.get(begun ?? '')
  const perhaps = card && !card.asked ? perhapsHalfDone(now, card) : now
  return perhapsOpened(perhaps, mending)
}

/** What it puts back is back, and what it opened is closed. */
function asDone(now: AsItStands, { undoes = [], opens = [] }: HalfDone = {}): AsItStands {
  const back = new Set(undoes)
  const open = now.open?.filter((each) => !opens.includes(each))
  const { open: _, ...rest } = now
  return {
    ...rest,
    setups: without(now.setups, back),
    unsure: without(now.unsure, back),
    ...(open && open.length > 0 && { open }),
  }
}

function afterPutRight(
  now: AsItStands,
  came: Exclude<PutRight, 'taken back'>,
  half?: HalfDone,
): AsItStands {
  switch (came) {
    case 'still there':
      // Whatever was in the way of another try went back before it; what it set otherwise is so still.
      return { ...together, ...(half?.stays && { open: half.stays }) }
    case 'done':
      return asDone(now, half)
    case 'not done':
      return perhapsOpened(now, half)
  }
}

/** Nobody knows how far they had come. */
const isCut = (event: JobEvent): event is Extract<JobEvent, { kind: 'cut off' | 'tried' }> =>
  event.kind === 'cut off' || (event.kind === 'tried' && event.brokenOff === true)

/** All that may be apart is put back before anything else is asked; but on a stop circuit nobody relies for that. */
const allBack = ({ setups, unsure }: AsItStands): AsItStands => ({
  ...together,
  unsure: [...setups, ...unsure].filter(({ stopOff }) => stopOff),
})

/** A way home was begun, for which all else goes back first: nobody knows what is back, and what is apart for it. */
const halfDone = (now: AsItStands, setups: readonly SetupCard[]): AsItStands =>
  perhapsAsBefore(perhapsAsBefore(together, now), { ...together, setups })

/** As the checks of the case know them: what none of them needs is in nobody's way. */
function setupsNamed(checks: Case['checks'], names: readonly string[]): SetupCard[] {
  const all = [...checks.values()].flatMap(({ setups }) => setups)
  // It outlasts the try, whatever a check would do with it at its end.
  return names.flatMap((name) => {
    const setup = all.find(({ id }) => id === name)
    if (setup === undefined) return []
    const { once: _, ...lasting } = setup
    return lasting
  })
}

/** The machine as a check leaves it, if its page was followed. */
export function afterwards(before: AsItStands, card: CheckCard): AsItStands {
  const { setups, unsure } = before
  const { setups: needs } = card
  const putBack = inTheWay(before, card)
  const lasting = needs.filter(stays)
  const stayed = without(setups, putBack)
  const known = namesOf([...stayed, ...needs])
  return {
    setups: [...stayed, ...without(lasting, namesOf(stayed))],
    unsure: without(without(unsure, putBack), known),
    fading: fadingAfter(before.fading, card, wayTo(before, card)),
  }
}

/** By name, for the planner: what is apart, off, fitted or hot, as far as it is known. */
export function standsOf({ setups, unsure, fading }: AsItStands): Stands {
  const staying = [...setups, ...unsure].map(({ id }) => [id, Number.POSITIVE_INFINITY] as const)
  return new Map([...staying, ...fading.map(({ setup, left }) => [setup.id, left] as const)])
}
