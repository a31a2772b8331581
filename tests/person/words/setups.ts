import { sentence, upperFirst } from '../../../server/jobs/words/sentences.ts'
import { kitCard } from '../../../server/knowledge/instantiate/setup-cards.ts'
import type { Knowledge } from '../../../server/knowledge/knowledge.ts'
import type { Machine } from '../../../server/knowledge/schema/machine.ts'
import { nowAt } from '../world/now.ts'
import type { Site } from '../world/site.ts'
import { add, type Change, caps, doing, having, plugs, remove } from '../world/standing.ts'
import { runs } from '../world/systems/engine.ts'
import { outputsOf } from '../world/world.ts'
import { positionsIn } from './steps.ts'
import { pull, type Where } from './where.ts'

/**
 * What a sentence of the list above the steps does: the words of a set-up of this machine, to make it or to take it
 * back.
 *
 * @throws Error for a sentence that is neither, with where to teach it
 */
export function setupDoes(printed: string, knowledge: Knowledge, where: Where): Change {
  const known = setupIn(printed, knowledge, where)
  if (known !== null) return known
  if (saysNothing.some((words) => words.test(printed))) return (standing) => standing
  throw new Error(
    `The page says “${printed}” above its steps, and the literal person does not know what that does: teach it in tests/person/words/setups.ts.`,
  )
}

/** Sentences that stand there and leave the machine as it is. */
const saysNothing = [/^Leave .* as it is/, /^Before anything else at the next start/]

/** Whoever finds it done already has nothing to do; doing it again changes nothing. */
const perhapsDone = /^Unless it is so already: /

/** The same of a page that says other things as well: null for a sentence that is no set-up. */
export function setupIn(printed: string, knowledge: Knowledge, where: Where): Change | null {
  const change = sayings(knowledge, where).get(plainly(printed.replace(perhapsDone, '')))?.(where)
  // "Turn the key to OFF" within a set-up turns the key, and no other word turns it back.
  return change ? doing([change, ...positionsIn(printed)]) : null
}

const plainly = (text: string) => upperFirst(sentence(text)).replaceAll('\u00a0', ' ')

/** What the words of a set-up do, on the machine as it stands there. */
type Saying = (where: Where) => Change

const known = new WeakMap<Machine, ReadonlyMap<string, Saying>>()

/** Everything that a set-up of this machine is put in words by, and what those words do. */
function sayings(knowledge: Knowledge, { site: { world } }: Where): ReadonlyMap<string, Saying> {
  const all = known.get(world.machine) ?? sayingsOf(knowledge, world.machine)
  known.set(world.machine, all)
  return all
}

function sayingsOf({ setups }: Knowledge, machine: Machine): ReadonlyMap<string, Saying> {
  const all: (readonly [says: string | undefined, saying: Saying])[] = [
    ...Object.entries(machine.access).flatMap(([id, cover]) => [
      [cover.do, () => doing([add('off', id), coverOff(id, true)])] as const,
      [undoing(cover), () => doing([remove('off', id), coverOff(id, false)])] as const,
    ]),
    ...Object.entries(machine.connectors).flatMap(([id, { unplug }]) => [
      [unplug.do, (where: Where) => pull(where, [id])] as const,
      [joining(id, machine), () => remove('apart', id)] as const,
    ]),
    ...Object.keys(setups.setups).flatMap((id) => {
      const card = kitCard(id, setups, machine)
      return [
        [card.do, (where: Where) => made(id, where)] as const,
        [card.undo?.do, (where: Where) => undone(id, where)] as const,
        [card.lasts?.do, stillHot] as const,
      ]
    }),
  ]
  return new Map(all.flatMap(([says, saying]) => (says ? [[plainly(says), saying] as const] : [])))
}

/** A fuse and a battery lead stand among the covers: what is behind them is electricity. */
function coverOff(id: string, off: boolean): Change {
  if (id === 'fuse-out') return having({ fuseOut: off })
  if (id === 'battery-off') return having({ batteryGroundOff: off })
  return (standing) => standing
}

/** A connector is joined by the words of its sheet, or by those that serve all that have none of their own. */
function joining(id: string, { connectors }: Machine): string {
  const { name, face, unplug } = connectors[id]!
  const holds =
    face.latch === 'none' ? 'pull at it: it must hold' : 'push until you hear its latch click'
  return undoing(unplug) ?? `Join the ${name} again and ${holds}.`
}

/** How a sheet or a set-up says that it is put back; nothing where it leaves nothing behind. */
function undoing({ undo }: { readonly undo?: unknown }): string | undefined {
  return typeof undo === 'object' && undo !== null && 'do' in undo ? String(undo.do) : undefined
}

function made(id: string, where: Where): Change {
  const outputs = outputsOf(where.site.world)
  switch (id) {
    case 'plugs-out-grounded':
      return doing([plugs('out', ...outputs), caps('on a grounded plug', ...outputs)])
    case 'tester-fitted':
      return caps('on a tester', ...outputs)
    case 'caps-grounded':
      return caps('on a grounded plug', ...outputs)
    case 'stop-circuit-unplugged':
      return pull(where, ['stop-plug'])
    case 'run-line-bridged':
      return having({ jumper: 'run wire' })
    case 'igniter-fed':
      return having({ jumper: 'supply' })
    case 'relay-fed':
      return doing([pull(where, ['relay-plug']), having({ jumper: 'relay' })])
    case 'battery-charged':
      return having({ batteryOut: true, charged: true })
    case 'flywheel-bare':
      return doing([
        plugs('out', ...outputs),
        caps('on a grounded plug', ...outputs),
        having({ flywheelBare: true, stopSwitch: 'OFF' }),
      ])
    case 'leads-dark-and-wet':
      return having({ wetAt: where.site.clock })
    case 'run-until-hot':
      return (standing) => ranHot({ ...where.site, standing })
    default:
      // What is fitted to the meter or stands ready beside the machine changes nothing on it.
      return (standing) => standing
  }
}

/** It can only be run hot where it runs; what is still dead hot is let cool, and run hot again. */
function ranHot(site: Site) {
  const standing = { ...site.standing, stopSwitch: 'RUN', tether: 'on' } as const
  const ran = [standing, { ...standing, hotAt: null }].some((each) =>
    runs(nowAt({ ...site, standing: each })),
  )
  return ran ? { ...standing, hotAt: site.clock } : { ...standing, couldNotRun: true }
}

/** Run again only where it has come back. */
function stillHot({ site }: Where): Change {
  return (standing) => {
    const isBack = runs(
      nowAt({ ...site, standing: { ...standing, stopSwitch: 'RUN', tether: 'on' } }),
    )
    return isBack ? ranHot({ ...site, standing }) : standing
  }
}

function undone(id: string, where: Where): Change {
  const outputs = outputsOf(where.site.world)
  switch (id) {
    case 'plugs-out-grounded':
    case 'tester-fitted':
    case 'caps-grounded':
      return doing([plugs('in', ...outputs), caps('on its plug', ...outputs)])
    case 'stop-circuit-unplugged':
      return remove('apart', 'stop-plug')
    case 'run-line-bridged':
    case 'igniter-fed':
      return having({ jumper: null })
    case 'relay-fed':
      return doing([remove('apart', 'relay-plug'), having({ jumper: null })])
    case 'battery-charged':
      return having({ batteryOut: false, batteryGroundOff: false })
    case 'flywheel-bare':
      return having({ flywheelBare: false })
    case 'leads-dark-and-wet':
      return having({ wetAt: null })
    default:
      return (standing) => standing
  }
}
