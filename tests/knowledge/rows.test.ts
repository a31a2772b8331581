import { describe, expect, it } from 'vitest'
import { shippedCases, shippedKnowledge } from '../support/knowledge.ts'

const cases = shippedCases()

/** Chance of an outcome of a check, in a case, where these faults are there; none of them: a cause outside the tree. */
function chance(where: string, check: string, outcome: string, ...faults: readonly string[]) {
  const { model } = cases.find(
    ({ complaint, machine }) => `${complaint.id} on ${machine.id}` === where,
  )!
  const { outcomes, chances } = model.checks.find(({ id }) => id === check)!
  const cutSet = model.cutSets.findIndex((each) => each.faults.join() === faults.join())
  return chances[cutSet]![outcomes.indexOf(outcome)]!
}

describe('a cause outside the tree', () => {
  const where = 'one-cylinder-dead on larkfell-2i'

  it.each(['larkfell-2i', 'ferrymere-3t', 'freshet-4d'])(
    'takes one cylinder of %s, each as likely as the next, and is no other thing at each',
    (machine) => {
      const { model } = cases.find(
        ({ complaint, ...each }) =>
          complaint.id === 'one-cylinder-dead' && each.machine.id === machine,
      )!
      const { outputs } = shippedKnowledge().machines.get(machine)!
      const outside = [...model.cutSets.entries()].filter(([, { faults }]) => faults.length === 0)
      expect(outside.map(([, { at }]) => at)).toEqual(outputs.map(({ id }) => id))
      for (const [c, { at, prior }] of outside) {
        expect(prior).toBeCloseTo(0.05 / outputs.length, 2)
        const told = (check: string, outcome: string) => {
          const { chances, outcomes } = model.checks.find(({ id }) => id === check)!
          return chances[c]![outcomes.indexOf(outcome)]!
        }
        expect(told('ask-which-cylinder', at!)).toBeGreaterThan(0.85)
        for (const { id } of outputs)
          expect(told(`exhaust-warmth.${id}`, id === at ? 'cold' : 'hot')).toBeGreaterThan(0.85)
      }
    },
  )

  it('leaves the spark as it is, whatever changes places', () => {
    const asItIs = chance(where, 'spark-on-tester.left', 'spark')
    expect(asItIs).toBeGreaterThan(0.85)
    expect(chance(where, 'swap-coils.left', 'spark')).toBeGreaterThan(0.85)
  })

  it('leaves the lamps aglow, for no magnet is weak', () => {
    const glow = (...faults: readonly string[]) =>
      chance('hard-start-cold on pedlar-1c', 'ask-lamps-glow', 'glow', ...faults)
    expect(glow()).toBeGreaterThan(0.6)
    expect(glow('flywheel.faded')).toBeLessThan(0.2)
  })

  it('is not cured by what would cure one in it', () => {
    expect(chance('no-pump-prime on larkfell-2i', 'unit-ground-jumper', 'silent')).toBeGreaterThan(
      0.9,
    )
  })
})

describe('a fault that comes and goes', () => {
  const cutsOut = (check: string, outcome: string, fault = 'wires-coil.corroded') =>
    chance('cuts-out on pedlar-1c', check, outcome, fault)

  it('is gone for the meter at times, and still there to be seen', () => {
    const staying = chance(
      'no-spark on pedlar-1c',
      'wire-end-to-end.wires-coil',
      'in range',
      'wires-coil.open',
    )
    expect(staying).toBeLessThan(0.1)
    const gone = cutsOut('wire-end-to-end.wires-coil', 'in range', 'wires-coil.loose')
    expect(gone).toBeGreaterThanOrEqual(0.3)
    expect(cutsOut('pins-look.wires-coil', 'corroded')).toBeGreaterThan(0.75)
  })

  it('is brought back by water on the wire, in that complaint only', () => {
    expect(cutsOut('mist-running.wires-coil', 'stumbles')).toBeGreaterThan(0.6)
    const elsewhere = cases.filter(({ complaint }) => complaint.id !== 'cuts-out')
    const misted = elsewhere.filter(({ checks }) =>
      [...checks.keys()].some((id) => id.startsWith('mist-running')),
    )
    expect(misted).toEqual([])
  })
})

it('a leak to the core shows at work and not with both ends free', () => {
  const leak = (check: string) =>
    chance('no-spark on pedlar-1c', check, 'in range', 'exciter.leaks-under-load')
  expect(leak('peak-voltage.exciter.igniter-plug')).toBeGreaterThan(0.8)
  expect(leak('peak-voltage-at-work.exciter.igniter-plug')).toBeLessThan(0.2)
})

it('an engine is run until it fails hot only where heat is what one complains of', () => {
  const hot = cases.filter(({ checks }) =>
    [...checks.values()].some(({ setups }) => setups.some(({ id }) => id === 'run-until-hot')),
  )
  const complaints = new Set(hot.map(({ complaint }) => complaint.id))
  expect(complaints).toEqual(new Set(['dies-hot', 'hard-start-hot']))
})

it('where it dies hot by the trailside, a meter reads hot what a cold reading passes', () => {
  const read = (check: string) =>
    chance('dies-hot on haulmoor-1e', check, 'open', 'exciter.fails-hot')
  expect(read('winding-resistance.exciter.igniter-plug')).toBeLessThan(0.1)
  expect(read('resistance-when-hot.exciter.igniter-plug')).toBeGreaterThan(0.7)
})

it('a flooded plug that is wiped dry fires, a cracked one does not', () => {
  const fires = (fault: string) =>
    chance('no-spark on pedlar-1c', 'spark-old-plug.single', 'spark', fault)
  expect(fires('flooding.wet')).toBeGreaterThan(0.8)
  expect(fires('plug.cracked')).toBeLessThan(0.15)
})

it('a flooded engine starts on what dries its plugs as often as not', () => {
  const flooded = (check: string, outcome: string) =>
    chance('spark-no-start on pedlar-1c', check, outcome, 'flooding.wet')
  expect(flooded('new-plug-tried.single', 'well')).toBeGreaterThan(0.4)
  expect(flooded('fed-from-a-can.fuel-feed', 'starts')).toBeGreaterThan(0.4)
  expect(flooded('drops-of-fuel', 'coughs')).toBeGreaterThan(0.3)
})

it('soot on a plug speaks less against it where a choke or a filter may have made it', () => {
  const sooty = (...faults: string[]) =>
    chance('bogs-limited on pedlar-1c', 'plug-look-one.single', 'bad', ...faults)
  expect(sooty('carburettor.choke-closed')).toBeGreaterThan(0.5)
  expect(sooty()).toBeGreaterThan(0.25)
  expect(sooty('igniter.weak')).toBeLessThan(0.2)
})

it('an adaptor, which draws next to nothing, lets a poor pin pass that starves pump or coil', () => {
  const passes = (where: string, check: string, fault: string) =>
    chance(where, check, 'in range', fault)
  const pump = (fault: string) => passes('no-pump-prime on larkfell-2i', 'pump-volts', fault)
  for (const fault of ['wires-pump.corroded', 'wires-injection.corroded', 'injection.bad-joint'])
    expect(pump(fault), fault).toBeGreaterThan(0.4)
  expect(pump('wires-pump.open')).toBeLessThan(0.1)
  const coil = (fault: string) =>
    passes('hard-start-cold on pedlar-1c', 'pulse-strength.single', fault)
  expect(coil('wires-coil.corroded')).toBeGreaterThan(0.4)
  // What starves the igniter itself starves its pulse.
  expect(coil('wires-exciter.corroded')).toBeLessThan(0.15)
})

it('compression that only heat takes is felt and measured hot', () => {
  const felt = cases
    .filter(({ complaint }) => complaint.id === 'hard-start-hot')
    .flatMap(({ checks }) => [...checks.values()].filter(({ id }) => id.startsWith('compression')))
  expect(felt.length).toBeGreaterThan(8)
  for (const { id, setups } of felt)
    expect(
      setups.map((setup) => setup.id),
      id,
    ).toContain('run-until-hot')
})

it('how it dies is asked only of what dies by itself', () => {
  const asked = (check: string) =>
    new Set(cases.filter(({ checks }) => checks.has(check)).map(({ complaint }) => complaint.id))
  expect(asked('ask-how-it-dies')).toEqual(new Set(['dies-hot']))
  expect(asked('ask-how-it-stops')).toEqual(new Set(['starts-then-dies']))
})

it('a fused lead feeds past a supply that is open, and blows on one that is grounded', () => {
  const comesBack = (fault: string) =>
    chance('no-spark on brackenway-1b', 'spark-fed', 'spark', fault)
  expect(comesBack('wires-supply.open')).toBeGreaterThan(0.9)
  expect(comesBack('wires-supply.grounded')).toBeLessThan(0.1)
})

describe('a stop wire that heat softens onto metal', () => {
  const spark = (check: string, fault: string) =>
    chance('dies-hot on clipwell-1m', check, 'spark', fault)

  it('takes the spark hot as a dead module does, until it is unplugged', () => {
    expect(spark('spark-when-hot.single', 'wires-stop.melts-hot')).toBeLessThan(0.1)
    expect(spark('spark-when-hot.single', 'module.fails-hot')).toBeLessThan(0.1)
    expect(spark('spark-stop-unplugged-hot', 'wires-stop.melts-hot')).toBeGreaterThan(0.8)
    expect(spark('spark-stop-unplugged-hot', 'module.fails-hot')).toBeLessThan(0.2)
  })

  it('reads well cold, and is no fault of what does not spark cold', () => {
    const reads = (check: string) =>
      chance('dies-hot on clipwell-1m', check, 'in range', 'wires-stop.melts-hot')
    expect(reads('stop-line.wires-stop.stop-plug')).toBeGreaterThan(0.7)
    const faults = cases
      .filter(({ complaint }) => complaint.id !== 'dies-hot')
      .flatMap(({ model }) => model.cutSets.flatMap((cutSet) => cutSet.faults))
    expect(faults.filter((fault) => fault.endsWith('.melts-hot'))).toEqual([])
  })
})

it('a tank that draws no air starves it hot, and leaves the spark', () => {
  const told = (check: string, outcome: string) =>
    chance('dies-hot on pedlar-1c', check, outcome, 'fuel-feed.blocked')
  expect(told('fuel-flow.fuel-feed', 'trickles')).toBeGreaterThan(0.7)
  expect(told('spark-when-hot.single', 'spark')).toBeGreaterThan(0.8)
})

it('a module on its leg takes as long to cool as what is behind the flywheel', () => {
  const long = chance('dies-hot on clipwell-1m', 'ask-how-long-cold', 'long', 'module.fails-hot')
  expect(long).toBeGreaterThan(0.6)
})

describe('a spark on a tester', () => {
  const where = 'one-cylinder-dead on larkfell-2i'

  it('is thin where it jumps a break, and gone where nothing feeds the coil', () => {
    const thin = (fault: string) => chance(where, 'spark-on-tester.left', 'weak', fault)
    expect(thin('cap-left.open')).toBeGreaterThan(0.3)
    expect(thin('coil-left.secondary-open')).toBeGreaterThan(0.3)
    expect(thin('igniter-left.dead')).toBeLessThan(0.1)
    expect(thin('wires-coil-left.open')).toBeLessThan(0.1)
  })

  it('changes sides with the coil that weakens it', () => {
    const thin = (fault: string) => chance(where, 'swap-coils.left', 'weak', fault)
    expect(thin('coil-right.secondary-shorted')).toBeGreaterThan(0.4)
    expect(thin('coil-left.secondary-shorted')).toBeLessThan(0.1)
  })
})

it('a battery that is only flat sags like a tired one, and passes the tester once it is charged', () => {
  const at = (check: string, outcome: string, fault: string) =>
    chance('does-not-turn on brackenway-1b', check, outcome, fault)
  for (const fault of ['battery.flat', 'battery.tired'])
    expect(at('starter-volts.starter', 'low', fault)).toBeGreaterThan(0.8)
  expect(at('battery-load.battery', 'in range', 'battery.flat')).toBeGreaterThan(0.85)
  expect(at('battery-load.battery', 'in range', 'battery.tired')).toBeLessThan(0.15)
})

describe('a fuse that blows', () => {
  const where = 'blows-the-fuse on brackenway-1b'

  it('is black inside where a wire is on metal, and sags where what was added draws too much', () => {
    const black = (...faults: readonly string[]) =>
      chance(where, 'fuse-witness.fuse', 'splashed', ...faults)
    expect(black('wires-feed.grounded')).toBeGreaterThan(0.6)
    expect(black()).toBeLessThan(0.4)
  })

  it('lights no lamp in its place where nothing behind it is shorted with the key at OFF', () => {
    for (const fault of ['fuse.burnt-holder', 'fuse.too-small', 'wires-start.grounded'])
      expect(chance(where, 'lamp-for-fuse', 'dark', fault), fault).toBeGreaterThan(0.9)
  })
})
