import { sentence } from '../../../server/jobs/words/sentences.ts'
import type { Knowledge } from '../../../server/knowledge/knowledge.ts'
import { nowAt } from '../world/now.ts'
import type { Site } from '../world/site.ts'
import { add, type Change, caps, doing, having, plugs, remove } from '../world/standing.ts'
import { runs } from '../world/systems/engine.ts'
import { outputsOf } from '../world/world.ts'
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
  throw new Error(
    `The page says “${printed}” above its steps, and the literal person does not know what that does: teach it in tests/person/words/setups.ts.`,
  )
}

/** The same of a page that says other things as well: null for a sentence that is no set-up. */
export function setupIn(printed: string, knowledge: Knowledge, where: Where): Change | null {
  return sayings(knowledge, where).get(plainly(printed)) ?? null
}

const plainly = (text: string) => sentence(text).replaceAll('\u00a0', ' ')

/** Everything that a set-up of this machine is put in words by, and what those words do. */
function sayings({ setups }: Knowledge, where: Where): ReadonlyMap<string, Change> {
  const { machine } = where.site.world
  const all: (readonly [says: string | undefined, change: Change])[] = [
    ...Object.entries(machine.access).flatMap(([id, cover]) => [
      [cover.do, add('off', id)] as const,
      [undoing(cover), remove('off', id)] as const,
    ]),
    ...Object.entries(machine.connectors).flatMap(([id, { unplug }]) => [
      [unplug.do, pull(where, [id])] as const,
      [undoing(unplug), remove('apart', id)] as const,
    ]),
    ...Object.entries(setups.setups).flatMap(([id, setup]) => [
      [setup.do, made(id, where)] as const,
      [undoing(setup), undone(id, where)] as const,
    ]),
  ]
  return new Map(all.flatMap(([says, change]) => (says ? [[plainly(says), change] as const] : [])))
}

/** Sheets and set-ups say how they are taken back in `undo`, where they do. */
const undoing = (entry: object): string | undefined =>
  'undo' in entry && typeof entry.undo === 'string' ? entry.undo : undefined

function made(id: string, where: Where): Change {
  const outputs = outputsOf(where.site.world)
  switch (id) {
    case 'plugs-out-grounded':
      return doing([plugs('out', ...outputs), caps('on a grounded plug', ...outputs)])
    case 'tester-fitted':
      return caps('on a tester', ...outputs)
    case 'stop-circuit-unplugged':
      return pull(where, ['stop-plug'])
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

/** It can only be run hot where it runs. */
function ranHot(site: Site) {
  const standing = { ...site.standing, stopSwitch: 'RUN', tether: 'on' } as const
  return runs(nowAt({ ...site, standing })) ? { ...standing, hotAt: site.clock } : standing
}

function undone(id: string, where: Where): Change {
  const outputs = outputsOf(where.site.world)
  switch (id) {
    case 'plugs-out-grounded':
    case 'tester-fitted':
      return doing([plugs('in', ...outputs), caps('on its plug', ...outputs)])
    case 'stop-circuit-unplugged':
      return remove('apart', 'stop-plug')
    case 'battery-charged':
      return having({ batteryOut: false, batteryGroundOff: false })
    case 'flywheel-bare':
      return having({ flywheelBare: false })
    default:
      return (standing) => standing
  }
}
