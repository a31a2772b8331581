import { happens, spread } from '../../../server/practice/world/chance.ts'
import { shown } from '../../../server/practice/world/display.ts'
import type { CheckHere, Observation } from '../check.ts'
import { answer, barred, cannotTell, type Seen, typed } from '../seen.ts'
import { type Now, nowAt } from '../world/now.ts'
import { type Doing, doing } from '../world/site.ts'
import { having } from '../world/standing.ts'
import { isKeptFromStarting, type Starting, starting } from '../world/systems/starting.ts'
import { type Key, supplyVolts } from '../world/systems/supply.ts'
import type { World } from '../world/world.ts'
import { ask, fair, modes, noticed, rolesOf, sure, vague } from './asking.ts'
import { ohms, placesOn, several } from './reading.ts'

/** No two readings are quite alike; of a bad back-probe nothing is read. */
function volts(check: CheckHere, value: number): Seen {
  const { random, world } = check.site
  const read = happens(random, 0.012) ? 0.01 : value * spread(random, 1, 0.01)
  return typed(shown(world.meter, 'dc-voltage', read, random))
}

/** The key held at START; barred where what is apart keeps the starter from turning. */
function held(check: CheckHere, seeing: (now: Now, at: Starting) => Seen): Seen {
  const now = nowAt(check.site)
  if (isKeptFromStarting(now)) return barred('the starter cannot turn as it stands')
  return seeing(now, starting(now))
}

const heldVolts =
  (of: (at: Starting) => number): Observation =>
  (check) =>
    held(check, (_, at) => volts(check, of(at)))

/** The lowest of some looks, the wires bent and the key wiggled. */
const supply =
  (key: Key): Observation =>
  (check) => {
    const what: readonly Doing[] = key === 'RUN' ? several({ shaken: 'all' }, 3) : [{}, {}, {}]
    const read = () => what.map((each) => supplyVolts(nowAt(doing(check.site, each)), key))
    if (key === 'START') return held(check, () => volts(check, Math.min(...read())))
    return volts(check, Math.min(...read()))
  }

const contact =
  (what: Doing): Observation =>
  (check) => {
    const site = { ...check.site, standing: having({ stopSwitch: 'RUN' })(check.site.standing) }
    const here = { ...check, site }
    return ohms(here, placesOn(here, 'own'), { enter: 'highest', while: several(what, 5) })
  }

/** What one hears with the key at START. */
function heard(at: Starting): string {
  if (!at.isCalled) return 'silent'
  if (at.whirs) return 'whirs'
  if (at.rpm > 60) return 'slow'
  // A relay that drops out as the battery gives way pulls in again at once.
  return at.battery < 6.5 ? 'rattle' : 'click'
}

const turnsNow =
  (yes: string, no: string): Observation =>
  (check) =>
    held(check, (_, at) => answer(at.rpm > 250 ? yes : no))

const turnByHand: Observation = ({ site }) => {
  const isStuck = site.world.elsewhere && happens(site.random, 0.66)
  return answer(isStuck ? 'stuck' : 'free')
}

const startSound = (world: World, random: () => number, check: CheckHere): string => {
  const now = nowAt({ ...check.site, world })
  const truth = heard(starting(now))
  return noticed(random, fair, truth, truth === 'silent' ? 'click' : 'silent')
}

const startControls = (world: World, random: () => number): string => {
  if (!rolesOf(world).includes('start-switch')) return noticed(random, sure, 'none', 'trouble')
  return modes(world).includes('out-of-place')
    ? noticed(random, vague, 'off', 'none')
    : noticed(random, vague, 'trouble', 'none')
}

const whichLetsGo = (world: World, random: () => number): string => {
  const roles = rolesOf(world)
  if (world.elsewhere) return noticed(random, fair, 'nothing', 'key')
  if (roles.includes('key-switch')) return noticed(random, sure, 'key', 'all')
  if (roles.includes('run-switch')) return noticed(random, sure, 'one', 'all')
  return noticed(random, sure, 'all', 'one')
}

/** What the electric start and an igniter that the battery feeds show. */
export const startingChecks: Readonly<Record<string, Observation>> = {
  'supply-volts': supply('RUN'),
  'supply-cranking': supply('START'),
  'supply-at-off': ({ site }) => answer(supplyVolts(nowAt(site), 'OFF') > 2 ? 'live' : 'dead'),
  'key-contact-run': contact({ shaken: 'all' }),
  'key-contact-run-at-start': contact({ atStart: true }),
  'key-contact-start': contact({ atStart: true }),
  'key-volts': heldVolts(({ atKey }) => atKey),
  'start-signal': heldVolts(({ signal }) => signal),
  'starter-volts': heldVolts(({ atStarter }) => atStarter),
  'relay-drop': heldVolts(({ relayDrop }) => relayDrop + 0.02),
  'relay-click': (check) =>
    held(check, (_, { isCalled }) => answer(isCalled ? 'clicks' : 'silent')),
  'relay-coil': (check) => ohms(check, placesOn(check, 'own'), { enter: 'all' }),
  'relay-fed': turnsNow('turns', 'as-before'),
  'jump-start-turns': turnsNow('turns', 'as-before'),
  'start-listen': (check) =>
    held(check, (_, at) =>
      at.rpm > 250 ? cannotTell('it turns as it should') : answer(heard(at)),
    ),
  'turn-by-hand': turnByHand,
  'ask-start-sound': ask(startSound),
  'ask-start-controls': ask(startControls),
  'ask-which-lets-go': ask(whichLetsGo),
}
