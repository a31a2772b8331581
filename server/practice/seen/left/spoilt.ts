import { likeliest } from '../../../diagnosis/belief/likeliest.ts'
import { type ByAbout, byAbout } from '../../../knowledge/by-about.ts'
import type { CheckCard } from '../../../knowledge/case.ts'
import { unplugId } from '../../../knowledge/instantiate/setup-cards.ts'
import type { Chances } from '../../../knowledge/schema/shared.ts'
import type { Hidden } from '../hidden.ts'
import { kindOf } from '../kind.ts'
import { holdsApart, isAboutTurning, keptFrom, plugsApart, wayIsApart } from './apart.ts'

/** What comes of a check with something left in its way. */
export type Spoilt =
  /** It cannot be made so: the engine does not run or is not turned, or what is looked at is cut off. */
  | { readonly kind: 'barred'; readonly by: readonly string[] }
  /** It shows a machine that fails by what is apart. */
  | { readonly kind: 'failing'; readonly outcome: string }
  /** That changes nothing here. */
  | { readonly kind: 'untouched' }

/** @param left set-ups in its way that do not keep anybody from trying */
export function spoilt(hidden: Hidden, card: CheckCard, left: readonly string[]): Spoilt {
  const unplugged = new Set(Object.keys(hidden.kase.machine.connectors).map(unplugId))
  const fitted = left.filter((id) => !unplugged.has(id))
  if (fitted.length > 0) return { kind: 'barred', by: fitted }
  const apart = plugsApart(hidden, left)
  const dead = keptFrom('running', hidden, apart)
  const bars = (plugs: readonly string[]): Spoilt => ({ kind: 'barred', by: plugs.map(unplugId) })
  if (card.engine === 'running' && dead.length > 0) return bars(dead)
  const still = card.engine === 'cranking' ? keptFrom('cranking', hidden, apart) : []
  if (still.length > 0 && !isAboutTurning(hidden, card)) return bars(still)
  const shown = byAbout(showing, kindOf(hidden.knowledge, card).about, hidden, card, apart)
  if (shown === 'cut off') return bars(apart)
  if (shown === null && still.length > 0) return bars(still)
  const changes = shown !== null && shown !== 'gone round'
  return changes ? { kind: 'failing', outcome: shown } : { kind: 'untouched' }
}

/** The outcome with these connectors apart, by its subject, or what they are to it; null where they are not on its way. */
const showing: ByAbout<[Hidden, CheckCard, readonly string[]], string | null> = {
  gate: ({ gate, without, holds, holdsNot }, hidden, card, apart) => {
    const { machine, gates } = hidden.kase
    const output = machine.outputs.find(({ id }) => card.id.split('.').includes(id))
    const copies = [gate, `${gate}/${output?.id}`].filter((name) => gates.has(name))
    const held = copies.map((copy) => holdsApart(hidden, copy, apart, without))
    if (held.includes(true)) return card.measurand ? deadBand(card) : likeliestOf(holds)
    if (held.includes('alone')) return likeliestOf(holdsNot)
    return held.includes('gone round') ? 'gone round' : null
  },
  property: (_about, hidden, card, apart) => {
    if (!wayIsApart(hidden, card, apart)) return null
    if (card.measurand !== undefined) return deadBand(card)
    const isCalled = keptFrom('cranking', hidden, apart).length > 0
    return isCalled && card.engine === 'cranking' ? failed(hidden, card) : 'cut off'
  },
  // Which of the outputs it is, the owner knows from before.
  which: () => null,
  question: ({ when }, hidden, _card, apart) => {
    const held = when.find(
      ({ gate }) => hidden.kase.gates.has(gate) && holdsApart(hidden, gate, apart) === true,
    )
    return held === undefined ? null : likeliestOf(held.chances)
  },
}

/** Nothing arrives: no path, no volts, and nothing lost where nothing flows. */
const deadBand = ({ outcomes }: CheckCard): string =>
  ['short', 'low', 'in range'].find((band) => outcomes.includes(band)) ?? 'open'

/** The answer that a good part does not give. */
function failed({ knowledge }: Hidden, card: CheckCard): string {
  const { about } = kindOf(knowledge, card)
  const good = about.kind === 'property' ? likeliestOf(about.healthy) : ''
  return card.outcomes.find((each) => each !== good) ?? good
}

function likeliestOf(chances: Chances): string {
  const names = Object.keys(chances)
  return names[likeliest(Object.values(chances))] ?? ''
}
