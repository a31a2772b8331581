import type { Case, CheckCard, Measurand } from '../../knowledge/case.ts'
import { copperShare } from '../../measure/correct/temperature.ts'

/** A check that is read in ohms, with what it is compared with. */
export type OhmsCard = CheckCard & { readonly part: string; readonly measurand: Measurand }

/** So many windings are shown, besides the one that reads highest. */
const most = 3

/**
 * The winding checks of a case that one may go wrong at with an ohmmeter: one of each role from end to end as it is at
 * the bench, the one that reads highest, and of one of them the path to ground.
 */
export function windingCards({ checks, machine }: Case): OhmsCard[] {
  const cards = [...checks.values()].filter(isPlainOhms)
  const roleOf = ({ part }: OhmsCard) => machine.parts.find(({ id }) => id === part)?.role
  const across = cards.filter(({ measurand: { quantity, material } }) => {
    return quantity.path === 'end to end' && copperShare(material) > 0
  })
  // Twins are made alike, and one of them teaches all there is.
  const windings = across
    .filter((card, i) => across.findIndex((each) => roleOf(each) === roleOf(card)) === i)
    .slice(0, most)
  const [highest] = across.toSorted((a, b) => leastOf(b) - leastOf(a))
  const shown = new Set([...windings, ...(highest ? [highest] : [])])
  const toGround = cards.find(
    (card) =>
      card.measurand.quantity.path === 'must not be' &&
      windings.some((each) => each.part === card.part && isSamePlace(each, card)),
  )
  return [...shown, ...(toGround ? [toGround] : [])]
}

const leastOf = ({ measurand: { limits } }: OhmsCard): number => limits.low ?? 0

const isSamePlace = (one: OhmsCard, other: OhmsCard): boolean =>
  one.spot?.connector !== undefined && one.spot.connector.id === other.spot?.connector?.id

/** Read with an ohmmeter on what is neither run hot nor warmed for it. */
function isPlainOhms(card: CheckCard): card is OhmsCard {
  const { part, measurand, setups } = card
  if (part === undefined || measurand?.quantity.setting !== 'resistance') return false
  const isHot = setups.some(({ once, undo }) => once === true && undo === undefined)
  return measurand.warmedTo === undefined && !isHot
}
