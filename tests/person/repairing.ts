import type { Knowledge } from '../../server/knowledge/knowledge.ts'
import { seedOf } from '../../server/practice/world/chance.ts'
import { seeded } from '../bench/random.ts'
import { changed } from './incidents.ts'
import type { Bench } from './making.ts'
import type { Incident } from './record.ts'
import { setupIn } from './words/setups.ts'
import { stepsDo } from './words/steps.ts'
import type { Where } from './words/where.ts'
import { complains } from './world/complaints.ts'
import { nowAt } from './world/now.ts'
import { type Site, seatOf } from './world/site.ts'
import { allTogether, remove, type Standing } from './world/standing.ts'
import { ropeIsOff } from './world/systems/engine.ts'
import { cured, outputsOf } from './world/world.ts'

/** Fits new parts: what was wrong with them is gone, and their own plugs are together. Nothing else is touched. */
export function repaired(bench: Bench, parts: readonly string[]): Bench {
  const site = siteOf(bench)
  const seats = parts.map((part) => seatOf(site, part))
  const plugs = seats.flatMap((part) => plugsOf(site, part))
  const standing = remove('apart', ...plugs)(bench.standing)
  return { ...bench, world: cured(bench.world, seats), standing }
}

function plugsOf({ world: { circuit } }: Site, part: string): readonly string[] {
  const { ends, grounded, legs, wires, boxes } = circuit
  const box = boxes.find((each) => each.part === part)
  return [
    ...[ends[part]?.[0], grounded?.[part]?.[0], legs[part]?.[0]].filter(
      (plug) => plug !== undefined,
    ),
    ...(wires[part] ?? []).flat().map(([plug]) => plug),
    ...[...(box?.inputs ?? []), ...(box?.outputs ?? [])].flat().map(([plug]) => plug),
  ]
}

/** What a hand puts right there and then; all else needs a new part. */
const byHand: ReadonlySet<string> = new Set([
  ...['loose', 'out-of-place', 'pushed-back', 'wet', 'blown'],
  ...['shut', 'choke-closed', 'idle-low', 'boils'],
  ...['oiled', 'ground-lost', 'melts-hot'],
])

/**
 * What was seen at one of these parts is put right by hand, all is put together, and it is tried.
 *
 * @returns the part that it was, and the bench after it; null where the trouble stays
 */
export function mended(
  bench: Bench,
  parts: readonly string[],
): { readonly part: string; readonly bench: Bench } | null {
  const site = siteOf(bench)
  const standing = allTogether(outputsOf(bench.world))
  for (const part of parts) {
    const seat = seatOf(site, part)
    const isIt = bench.world.faults.some((each) => each.part === seat && byHand.has(each.mode))
    if (!isIt) continue
    const after = { ...bench, world: cured(bench.world, [seat]), standing }
    if (!complains(siteOf(after))) return { part, bench: after }
  }
  return null
}

/** Whether the complaint is still there, when it is tried as the page says; and what stood in its way. */
export function tried(
  knowledge: Knowledge,
  bench: Bench,
  steps: readonly string[],
  isRight: boolean,
): {
  readonly stillThere: boolean
  readonly standing: Standing
  readonly incidents: readonly Incident[]
} {
  const where: Where = { site: siteOf(bench), part: '', output: '', plug: undefined }
  const set = steps.reduce(
    (standing, step) => setupIn(step, knowledge, where)?.(standing) ?? standing,
    bench.standing,
  )
  const sentences = stepsDo(steps, where, (step) => setupIn(step, knowledge, where))
  const standing = sentences.before(set)
  const asLeft = siteOf({ ...bench, standing })
  const fresh = siteOf({ ...bench, standing: allTogether(outputsOf(bench.world)) })
  const at = (kind: Incident['kind']): Incident => ({
    kind,
    check: 'proof',
    says: changed(standing, fresh.standing),
  })
  if (ropeIsOff(nowAt(asLeft))) {
    // There is nothing to press for "cannot be tried": whoever stands there puts it together at last.
    return {
      stillThere: complains(fresh),
      standing: fresh.standing,
      incidents: [at('proof barred')],
    }
  }
  const stillThere = complains(asLeft)
  const isSpoilt = isRight && stillThere && !complains(fresh)
  return { stillThere, standing, incidents: isSpoilt ? [at('proof spoilt')] : [] }
}

function siteOf({ world, standing, clock }: Bench): Site {
  return { world, standing, clock, random: seeded(seedOf(world.seed, 'proof', clock)), doing: {} }
}
