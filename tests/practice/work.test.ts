import { describe, expect, it } from 'vitest'
import type { Case, CheckCard } from '../../server/knowledge/case.ts'
import { bandOf } from '../../server/measure/decide/bands.ts'
import { byWiring } from '../../server/practice/seen/by-wiring.ts'
import { drawHidden } from '../../server/practice/seen/draw.ts'
import { momentOf, propertyOf } from '../../server/practice/seen/moment.ts'
import { doesOf, trueMachine } from '../../server/practice/world/machine.ts'
import { placesAtWork } from '../../server/practice/world/work/places.ts'
import { pulseAt } from '../../server/practice/world/work/pulse.ts'
import { type AtWork, atWork } from '../../server/practice/world/work/volts.ts'
import { operatingPoint } from '../outside/simulator.ts'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const knowledge = shippedKnowledge()
const powered = [...knowledge.circuits.values()].filter(({ power }) => power !== undefined)

/** Checks of a machine that read volts at work, each with a case that has it. */
function voltChecks(machine: string): readonly (readonly [Case, CheckCard])[] {
  const once = new Map<string, readonly [Case, CheckCard]>()
  for (const kase of shippedCases().filter((each) => each.machine.id === machine)) {
    const truth = trueMachine(knowledge, kase, [], 1)!
    for (const card of kase.checks.values()) {
      if (propertyOf(truth, card)?.reads === 'volts') once.set(card.id, [kase, card])
    }
  }
  return [...once.values()]
}

const setupsOf = ({ setups }: CheckCard) => new Set(setups.map(({ id }) => id))

/** What a check reads of a machine with this fault, V; of three pairs the lowest. */
function read(kase: Case, card: CheckCard, faults: readonly string[], seed: number): number {
  const hidden = { ...drawHidden(knowledge, kase, 1), faults, air: 20 }
  const truth = trueMachine(knowledge, kase, faults, seed)
  const making = { take: 1, pull: 'brisk', stands: setupsOf(card) } as const
  const text = byWiring({ ...hidden, truth }, card, making, () => 0.5)!
  return Math.min(...text.split(' ').map(Number))
}

describe('a machine at work', () => {
  it.each(powered.map(({ id }) => id))(
    'of %s without a fault gives volts inside the limits',
    (id) => {
      const off = voltChecks(id).flatMap(([kase, card]) =>
        [1, 2].flatMap((seed) => {
          const volts = read(kase, card, [], seed)
          const { limits, quantity } = card.measurand!
          return bandOf(volts, limits, quantity) === 'in range' ? [] : [`${card.id}: ${volts}`]
        }),
      )
      expect(voltChecks(id).length).toBeGreaterThan(3)
      expect(off).toEqual([])
    },
  )

  it.each(powered.map(({ id }) => id))(
    'gives of %s what the circuit simulator gives',
    async (id) => {
      const circuit = knowledge.circuits.get(id)!
      const runs = voltChecks(id).flatMap(([kase, card]) => {
        if (circuit.legs?.[card.part!] !== undefined) return []
        const probes = placesAtWork(card, circuit, circuit.power!)!
        const own = kase.model.cutSets.flatMap(({ faults }) => (faults.length === 1 ? faults : []))
        const known = own.filter((fault) => doesOf(knowledge, kase.machine, fault) !== undefined)
        return known.slice(0, 5).map((fault, seed) => {
          const truth = trueMachine(knowledge, kase, [fault], seed)!
          const now = momentOf(truth, card, setupsOf(card), 20)
          const { property, rpm = 3000 } = card.measurand!
          const running = card.engine === 'running' ? rpm : null
          const working = { now, power: circuit.power!, rpm: running, property, probes }
          return { what: `${fault} by ${card.id}`, probes, all: atWork(working) }
        })
      })
      expect(runs.length).toBeGreaterThan(10)
      const theirs = await simulated(runs.map(({ all }) => all))
      for (const [i, { what, probes, all }] of runs.entries()) {
        const [ours, simulators] = [all.volts, theirs[i]!].map(
          (at) => at(probes[0]) - at(probes[1]),
        )
        expect(Math.abs(ours! - simulators!), what).toBeLessThan(0.01 + 0.01 * Math.abs(ours!))
      }
    },
  )

  it('loses at the lamp ground what is missing between its pins', () => {
    const [kase] = voltChecks('pedlar-1c').find(([, { id }]) => id.startsWith('ground-drop.lamp'))!
    const at = (check: string, seed: number) =>
      read(kase, kase.checks.get(check)!, ['lamp-ground.corroded'], seed)
    for (const seed of [1, 2, 3, 4, 5]) {
      const toMetal = at('lighting-volts.lighting.work-lamp-plug.2', seed)
      const toPin = at('lighting-volts.lighting.work-lamp-plug', seed)
      expect(toMetal - toPin).toBeCloseTo(at('ground-drop.lamp-ground', seed), 0)
    }
  })

  it('brings no volts to a starter whose key plug is apart, and no charge over an open wire', () => {
    const find = (machine: string, check: string) =>
      voltChecks(machine).find(([, { id }]) => id === check)!
    const [kase, card] = find('brackenway-1b', 'starter-volts.starter')
    const truth = trueMachine(knowledge, kase, [], 1)
    const stands = new Set([...setupsOf(card), 'unplug key-plug'])
    const hidden = { ...drawHidden(knowledge, kase, 1), faults: [], truth }
    const text = byWiring(hidden, card, { take: 1, pull: 'brisk', stands }, () => 0.5)
    expect(Number(text)).toBeLessThan(0.1)
    const [charging, volts] = find('haulmoor-1e', 'charge-volts')
    expect(read(charging, volts, ['wires-feed.open'], 1)).toBeLessThan(12.7)
    expect(read(charging, volts, [], 1)).toBeGreaterThan(13.5)
  })
})

describe('the pulse to the coil', () => {
  const kase = shippedCases().find(
    ({ complaint, machine }) => complaint.id === 'no-spark' && machine.id === 'pedlar-1c',
  )!
  const card = kase.checks.get('pulse-at-coil.single')!
  const { limits, rpm } = card.measurand!
  const volts = (faults: readonly string[], also: readonly string[] = []) => {
    const truth = trueMachine(knowledge, kase, faults, 3)
    const stands = new Set([...setupsOf(card), ...also])
    const hidden = { ...drawHidden(knowledge, kase, 1), faults, truth, air: 20 }
    return Number(byWiring(hidden, card, { take: 1, pull: 'brisk', stands }, () => 0.5))
  }

  it('is that of a good machine, and gone without exciter, pickup, ground or wire', () => {
    expect((volts([]) * rpm!) / 520).toBeGreaterThan(limits.low!)
    for (const fault of ['exciter.open', 'pickup.open', 'wires-coil.open', 'igniter.dead']) {
      expect(volts([fault]), fault).toBeLessThan(1)
    }
  })

  it('is gone on a pull and there at speed where the pickup gives a quarter of its volts', () => {
    const drawn = trueMachine(knowledge, kase, [], 3)!
    const truth = {
      ...drawn,
      effect: (part: string) => (part === 'pickup' ? { leg: 0, gives: 0.2 } : drawn.effect(part)),
    }
    const hidden = { ...drawHidden(knowledge, kase, 1), faults: [], truth, air: 20 }
    const making = { take: 1, stands: setupsOf(card) }
    const read = (pull: 'slow' | 'brisk') =>
      Number(byWiring(hidden, card, { ...making, pull }, () => 0.5))
    expect(['slow', 'brisk'].map((pull) => read(pull as 'slow'))).toEqual([0, 0])
    const fast = momentOf(truth, card, setupsOf(card), 20)
    const { peak, rpm: at } = truth.good('igniter')
    const pulse = (rpm: number) => pulseAt(fast, 'igniter', 'coil-plug', rpm, peak, rpm / at)!.volts
    expect(pulse(1500)).toBeGreaterThan(limits.low!)
  })

  it('is held off by a stop switch that is stuck closed, until its wire is parted', () => {
    expect(volts(['stop-switch.stuck-closed'])).toBeLessThan(1)
    expect(volts(['stop-switch.stuck-closed'], ['unplug stop-plug'])).toBeGreaterThan(100)
  })
})

/** The same networks in ngspice, all in one run. */
async function simulated(all: readonly AtWork[]): Promise<((place: string) => number)[]> {
  const names = all.map(() => new Map([['ground', '0']]))
  const lines = all.flatMap(({ network, sources }, k) => {
    const name = (of: string) => {
      const own = names[k]!
      if (!own.has(of)) own.set(of, `n${k}x${own.size}`)
      return own.get(of)!
    }
    return [
      ...network
        .filter(([a, b, ohms]) => a !== b && ohms < 1e10)
        .map(([a, b, ohms], i) => `R${k}x${i} ${name(a)} ${name(b)} ${Math.max(ohms, 1e-4)}`),
      ...sources
        .filter(({ ohms }) => ohms < 1e10)
        .flatMap(({ from, to, volts, ohms }, i) => [
          `V${k}x${i} s${k}x${i} ${name(from)} ${volts}`,
          `Rs${k}x${i} s${k}x${i} ${name(to)} ${Math.max(ohms, 1e-4)}`,
        ]),
    ]
  })
  const damp = names.flatMap((own, k) =>
    [...own.values()].filter((n) => n !== '0').map((n, i) => `Rg${k}x${i} ${n} 0 1e10`),
  )
  const voltage = await operatingPoint(['* machines at work', ...lines, ...damp].join('\n'))
  return names.map((own) => (place) => {
    const node = own.get(place)
    return node === undefined || node === '0' ? 0 : voltage(node)
  })
}
