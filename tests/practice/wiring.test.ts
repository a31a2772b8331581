import { describe, expect, it } from 'vitest'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { parseReading } from '../../server/measure/reading/parse.ts'
import { quantities } from '../../server/measure/reading/quantities.ts'
import { byWiring } from '../../server/practice/seen/by-wiring.ts'
import { drawHidden } from '../../server/practice/seen/draw.ts'
import type { Hidden } from '../../server/practice/seen/hidden.ts'
import { momentOf } from '../../server/practice/seen/moment.ts'
import { seeded } from '../../server/practice/world/chance.ts'
import { doesOf, type TrueMachine, trueMachine } from '../../server/practice/world/machine.ts'
import { ohmsAt, placesFor } from '../../server/practice/world/net/meet.ts'
import type { Moment } from '../../server/practice/world/net/moment.ts'
import { network } from '../../server/practice/world/net/network.ts'
import type { Resistor } from '../../server/practice/world/solve.ts'
import { operatingPoint } from '../outside/simulator.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()

/** Of each machine the case with most checks. */
const cases = [...knowledge.machines.keys()].map((id) =>
  shippedCases()
    .filter(({ machine }) => machine.id === id)
    .reduce((a, b) => (b.checks.size > a.checks.size ? b : a)),
)

/** Every fault of a machine that says what it does to the wiring. */
const faultsOf = ({ machine }: Case): string[] =>
  machine.parts.flatMap(({ id, kind }) =>
    knowledge.partKinds
      .get(kind)!
      .modes.map((mode) => `${id}.${mode.id}`)
      .filter((fault) => doesOf(knowledge, machine, fault) !== undefined),
  )

const asAsked = (truth: TrueMachine, card: CheckCard): Moment =>
  momentOf(truth, card, new Set(card.setups.map(({ id }) => id)), 20)

/** Where it touches. */
const placesOf = (card: CheckCard, { machine, circuit }: TrueMachine) => {
  const { kind } = machine.parts.find(({ id }) => id === card.part)!
  const { reads } = knowledge.partKinds.get(kind)!.properties[card.measurand!.property]!
  return placesFor(card, circuit, reads)
}

/** Checks that read ohms in the wiring, in whatever complaint of this machine. */
function ohmChecks({ machine }: Case): CheckCard[] {
  const circuit = knowledge.circuits.get(machine.id)!
  const all = shippedCases().filter((kase) => kase.machine.id === machine.id)
  const once = new Map(all.flatMap(({ checks }) => [...checks]))
  return [...once.values()].filter((card) => {
    const { kind } = machine.parts.find(({ id }) => id === card.part) ?? {}
    if (kind === undefined || card.measurand === undefined) return false
    const { reads } = knowledge.partKinds.get(kind)!.properties[card.measurand.property]!
    // What leads on through a switch follows its rows.
    const isOhms = reads === 'ohms' || reads?.startsWith('secondary')
    return isOhms && placesFor(card, circuit, reads) !== null
  })
}

/** The same networks in ngspice, an independent solver, all in one run: 1 mA in at one node and out at the other. */
async function simulatedOhms(all: readonly (readonly [readonly Resistor[], string, string])[]) {
  const lines = all.flatMap(([resistors, from, to], k) => {
    const names = new Map<string, string>([[to, '0']])
    const name = (of: string) => {
      if (!names.has(of)) names.set(of, `n${k}x${names.size}`)
      return names.get(of)!
    }
    const own = resistors
      .filter(([a, b, ohms]) => a !== b && ohms < 1e12)
      .map(([a, b, ohms], i) => `R${k}x${i} ${name(a)} ${name(b)} ${Math.max(ohms, 1e-6)}`)
    // What hangs on nothing needs a way to ground for the simulator, too weak to be read.
    const at = name(from)
    const loose = [...names.values()]
      .filter((n) => n !== '0')
      .map((n, i) => `Rg${k}x${i} ${n} 0 1e12`)
    return [`I${k} 0 ${at} 1m`, `Rp${k} ${at} p${k} 1`, `Rq${k} p${k} 0 1e12`, ...own, ...loose]
  })
  const voltage = await operatingPoint(['* networks of the machine', ...lines].join('\n'))
  return all.map((_, k) => voltage(`p${k}`) / 1e-3)
}

describe('the wiring of a machine', () => {
  it.each(cases.map((kase) => [kase.machine.id, kase] as const))(
    'reads every fault of %s as the circuit simulator does',
    async (_, kase) => {
      const asked = faultsOf(kase).flatMap((fault, f) => {
        const truth = trueMachine(knowledge, kase, [fault], 100 + f)!
        const part = fault.slice(0, fault.indexOf('.'))
        const about = ohmChecks(kase)
          .filter((card) => card.part === part)
          .slice(0, 2)
        return about.map((card) => ({ fault, card, now: asAsked(truth, card) }))
      })
      expect(asked.length).toBeGreaterThan(2)
      const places = asked.map(({ card, now }) => placesOf(card, now.truth)!)
      const runs = asked.map(
        ({ now }, i) => [network(now), places[i]![0]![0], places[i]![0]![1]] as const,
      )
      const theirs = await simulatedOhms(runs)
      for (const [i, { fault, card, now }] of asked.entries()) {
        const [ours] = ohmsAt(now, places[i]!.slice(0, 1)) as [number]
        const what = `${fault} by ${card.id}`
        // Above some MΩ the simulator reads its own ways to ground.
        if (ours > 2e7) expect(theirs[i], what).toBeGreaterThan(1e7)
        else expect(ours / theirs[i]!, what).toBeCloseTo(1, 2)
      }
    },
  )

  it.each(cases.map((kase) => [kase.machine.id, kase] as const))(
    'of %s without a fault reads inside the limits wherever the probes are set',
    (_, kase) => {
      const off = [1, 2, 3].flatMap((seed) => {
        const truth = trueMachine(knowledge, kase, [], seed)!
        return ohmChecks(kase).flatMap((card) => {
          const places = placesOf(card, truth)!
          const { limits, at, warmedTo } = card.measurand!
          const now = { ...asAsked(truth, card), celsius: () => warmedTo ?? at ?? 20 }
          const ohms = ohmsAt(now, places)
          const isIn = ohms.every(
            (each) => each >= (limits.low ?? 0) && each <= (limits.high ?? Infinity),
          )
          return isIn ? [] : [`${card.id}: ${ohms}, ${JSON.stringify(limits)}`]
        })
      })
      expect(ohmChecks(kase).length).toBeGreaterThan(1)
      expect(off).toEqual([])
    },
  )
})

it.each(cases.map((kase) => [kase.machine.id, kase] as const))(
  'of %s reads to ground what touches metal, wherever along a wire it does',
  (_, kase) => {
    const unseen = ohmChecks(kase)
      .filter(({ measurand }) => measurand!.property === 'wire-to-ground')
      .filter((card) => {
        const truth = trueMachine(knowledge, kase, [`${card.part}.grounded`], 1)!
        const ohms = ohmsAt(asAsked(truth, card), placesOf(card, truth)!)
        return Math.min(...ohms) > 1e5
      })
    expect(unseen.map(({ id }) => id)).toEqual([])
  },
)

it('shows less at a slow pull, and nothing through a broken winding', () => {
  const kase = cases.find(({ machine }) => machine.id === 'pedlar-1c')!
  const card = [...kase.checks.values()].find(
    ({ id }) => id === 'peak-voltage.exciter.igniter-plug',
  )!
  const stands = new Set(card.setups.map(({ id }) => id))
  const hidden: Hidden = { ...drawHidden(knowledge, kase, 5), faults: [] }
  const volts = (faults: readonly string[], pull: 'slow' | 'hard') => {
    const truth = trueMachine(knowledge, kase, faults, 5)
    return Number(
      byWiring({ ...hidden, faults, truth }, card, { take: 1, pull, stands }, seeded(1)),
    )
  }
  expect(volts([], 'slow')).toBeLessThan(0.6 * volts([], 'hard'))
  expect(volts([], 'hard')).toBeGreaterThan(card.measurand!.limits.low!)
  expect(volts(['exciter.open'], 'hard')).toBeLessThan(0.5)
  expect(volts(['flywheel.weak-magnets'], 'hard')).toBeLessThan(0.5 * volts([], 'hard'))
})

describe('two readings of one machine', () => {
  const kase = cases.find(({ machine }) => machine.id === 'pedlar-1c')!
  const all = shippedCases().filter(({ machine }) => machine.id === 'pedlar-1c')
  const card = (check: string) => all.map(({ checks }) => checks.get(check)).find((each) => each)!
  const shownWith = (fault: string, check: string, seed: number) => {
    const hidden = { ...drawHidden(knowledge, kase, seed), leads: 0, air: 20 }
    const faults = [fault]
    const truth = trueMachine(knowledge, kase, faults, seed)
    const stands = new Set(card(check).setups.map(({ id }) => id))
    const making = { take: 1, pull: 'brisk', stands } as const
    const text = byWiring({ ...hidden, faults, truth }, card(check), making, () => 0.5)!
    return parseReading(text, quantities.resistance)
  }
  const ohmsOf = (fault: string, check: string, seed: number): number => {
    const read = shownWith(fault, check, seed)
    return read.ok && read.reading.kind === 'value' ? read.reading.value : Infinity
  }

  it.each(['cap.burnt-high', 'coil.secondary-shorted', 'exciter.open'])(
    'add up: with %s coil, lead and cap together read what they read through the cap',
    (fault) => {
      for (const seed of [1, 2, 3, 4, 5]) {
        const parts = ['secondary-resistance.coil', 'lead-resistance.lead', 'cap-resistance.cap']
        const sum = parts.reduce((ohms, check) => ohms + ohmsOf(fault, check, seed), 0)
        expect(sum / ohmsOf(fault, 'through-cap-resistance.coil', seed)).toBeCloseTo(1, 1)
      }
    },
  )

  it('read open hot and good cold, where heat opens a winding, again and again', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const hot = ohmsOf('exciter.fails-hot', 'resistance-when-hot.exciter.igniter-plug', seed)
      const cold = ohmsOf('exciter.fails-hot', 'winding-resistance.exciter.igniter-plug', seed)
      expect([hot, cold < 1000]).toEqual([Infinity, true])
    }
  })

  it('find a stop switch that no longer closes open at its own plug and along its wire', () => {
    for (const seed of [1, 2, 3]) {
      const checks = [
        'closes-at-off.stop-switch.stop-switch-plug',
        'stop-line-off.wires-stop.stop-plug',
      ]
      const read = checks.map((check) => ohmsOf('stop-switch.does-not-close', check, seed))
      expect(read).toEqual([Infinity, Infinity])
      expect(ohmsOf('exciter.open', checks[1]!, seed)).toBeLessThan(2)
    }
  })
})
