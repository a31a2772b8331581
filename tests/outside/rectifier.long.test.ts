import { describe, expect, it } from 'vitest'
import { parseQuantityText } from '../../server/measure/reading/parse.ts'
import type { Draw } from '../person/world/effect.ts'
import { effects } from '../person/world/effects/index.ts'
import { chargeShare } from '../person/world/systems/charging.ts'
import { bandRead, charger, likeliest, row } from './by-the-tool.ts'
import { operatingPoint, over, simulate } from './simulator.ts'

const drawn: Omit<Draw, 'random'> = { complaint: 'not-charging', role: '', ohms: 1, volts: 0 }

/** A bridge of six diodes behind three legs, and what is wrong with it. Diodes by side and leg: `upper 0`. */
interface Bridge {
  readonly open?: readonly string[]
  readonly shorted?: readonly string[]
}

const silicon = '.model DP D(IS=1e-8 N=1.5 RS=5m CJO=100p BV=400)'

/** Legs `a0` to `a2`, between `plus` and `minus`. */
const diodes = ({ open = [], shorted = [] }: Bridge): string[] =>
  [0, 1, 2].flatMap((leg) =>
    [
      [`upper ${leg}`, `a${leg}`, 'plus'] as const,
      [`lower ${leg}`, 'minus', `a${leg}`] as const,
    ].flatMap(([name, anode, cathode], side) => {
      if (open.includes(name)) return []
      if (shorted.includes(name)) return [`R${side}${leg} ${anode} ${cathode} 0.01`]
      return [`D${side}${leg} ${anode} ${cathode} DP`]
    }),
  )

/** A 12-pole flywheel at 3000 rpm; of the winding, Ω and H of a leg (common practice, no published source). */
const hz = 300
const leg = { ohms: 0.175, henry: 2e-3 }

const legs = (pairVolts: number, henry: number): string[] =>
  [0, 1, 2].flatMap((i) => [
    `V${i} s e${i} SIN(0 ${(pairVolts * Math.SQRT2) / Math.sqrt(3)} ${hz} 0 0 ${120 * i})`,
    `L${i} e${i} r${i} ${henry}`,
    `Rl${i} r${i} a${i} ${leg.ohms}`,
  ])

/** The voltage at the output over time, with this on it. */
async function output(
  bridge: Bridge,
  load: readonly string[],
  { volts = 57, henry = leg.henry } = {},
) {
  const vectors = await simulate(`* three-phase rectifier
${[...legs(volts, henry), ...diodes(bridge), ...load].join('\n')}
Rs s 0 1e7
Rg minus 0 1m
${silicon}
.options reltol=1e-3 method=gear
.save v(plus)
.tran 20u 50m 40m 20u
.end`)
  return over(vectors, 'v(plus)', 0.04)
}

/** A battery that a charge of 8 A lifts by 1.4 V, behind a regulator that holds 14.4 V. From memory. */
const battery = ['Vb b 0 12.6', 'Rb plus b 0.175', 'Dz plus z DP', 'Vz z 0 13.7']

/** A that the battery pushes back into a bridge with a winding that stands still. */
async function drain(bridge: Bridge): Promise<number> {
  const still = legs(0, leg.henry).map((line) => line.replace(/SIN\(.*\)/, '0'))
  const voltage = await operatingPoint(
    [
      '* standing drain',
      ...still,
      ...diodes(bridge),
      'Vb b 0 12.6',
      'Rb b plus 0.1',
      'Rs s 0 1e9',
      'Rg minus 0 1m',
      silicon,
    ].join('\n'),
  )
  return (voltage('b') - voltage('plus')) / 0.1
}

/** V that a meter on its diode range shows: 1 mA, and no more than 2.8 V, which is OL. */
async function diodeRange(bridge: Bridge, red: string, black: string): Promise<number> {
  const voltage = await operatingPoint(
    [
      '* diode range',
      ...diodes(bridge),
      'Vm m 0 2.8',
      `Rm m ${red} 1800`,
      `Rb ${black} 0 1m`,
      ...['plus', 'minus', 'a0', 'a1', 'a2'].map((node) => `R${node} ${node} 0 10meg`),
      silicon,
    ].join('\n'),
  )
  return voltage(red) - voltage(black)
}

/** The answer to the diode test by all twelve readings. */
async function diodeTest(bridge: Bridge): Promise<string> {
  let [open, shorted] = [0, 0]
  for (const i of [0, 1, 2]) {
    for (const [anode, cathode] of [
      [`a${i}`, 'plus'],
      ['minus', `a${i}`],
    ] as const) {
      const through = await diodeRange(bridge, anode, cathode)
      const back = await diodeRange(bridge, cathode, anode)
      if (through > 1) open += 1
      else if (back < 1) shorted += 1
    }
  }
  return shorted > 0 ? 'one-shorted' : open > 0 ? 'one-open' : 'alike'
}

const one = { upper: { shorted: ['upper 0'] }, lower: { shorted: ['lower 1'] } }
const eachSide = { shorted: ['upper 0', 'lower 1'] }
const oneOpen = { open: ['upper 0'] }
const deadSide = { open: ['upper 0', 'upper 1', 'upper 2'] }

const sheet = (part: string, property: string) =>
  charger.machine.parts.find(({ id }) => id === part)!.limits![property]!
const voltsOf = (text: string | undefined) => parseQuantityText(text!)!.value

describe('a three-phase rectifier', () => {
  // Published: V = 3·√2/π·V(line to line, rms), as in any handbook of power electronics; its ripple from peak to
  // valley is 1 − cos 30° of the peak.
  it('without a battery gives 1.35 of what a pair of legs reads', async () => {
    const { mean, least, most } = await output({}, ['Rl plus 0 1000'], { volts: 57, henry: 1e-9 })
    const drops = 1.2
    expect((mean + drops) / 57).toBeCloseTo((3 * Math.SQRT2) / Math.PI, 1)
    expect(Math.abs((mean + drops) / (57 * 1.3505) - 1)).toBeLessThan(0.005)
    expect((most - least) / (most + drops)).toBeCloseTo(1 - Math.cos(Math.PI / 6), 2)
    // The meter is asked for a range that holds it, and the step for an end before it gets there.
    const { meter, do: steps } = charger.checks.get('rectifier-out-volts')!
    expect(mean).toBeLessThan(Number(/range of (\d+) V/.exec(meter!)![1]))
    expect(mean).toBeGreaterThan(Number(/above (\d+) V/.exec(steps.join(' '))![1]))
  })

  it('behind a winding at the very least that its sheet allows still charges within limits', async () => {
    const volts = voltsOf(sheet('charging', 'leg-volts').low)
    expect(1.35 * volts).toBeGreaterThan(voltsOf(sheet('rectifier', 'output-volts').high))
    const { mean } = await output({}, battery, { volts })
    expect(bandRead('charge-volts', mean)).toBe('in range')
    expect(bandRead('rectifier-out-volts', mean)).toBe('in range')
  })

  it.each([
    ['nothing wrong', {}, 'in range', 'alike'],
    ['one diode open', oneOpen, 'in range', 'one-open'],
    ['all diodes of one side open', deadSide, 'low', 'one-open'],
    ['one diode shorted to plus', one.upper, 'low', 'one-shorted'],
    ['one diode shorted to minus', one.lower, 'low', 'one-shorted'],
    ['a diode of each side shorted', eachSide, 'low', 'one-shorted'],
  ] as const)('with %s: %o, charges %s, diode test %s', async (_, bridge, charge, answer) => {
    const { mean } = await output(bridge, battery)
    expect(bandRead('charge-volts', mean)).toBe(charge)
    expect(await diodeTest(bridge)).toBe(answer)
  })

  it('shows its diodes as its table says', async () => {
    const kind = 'rectifier-regulator'
    expect(await diodeTest(deadSide)).toBe(likeliest(kind, 'open', 'diodes'))
    expect(await diodeTest(oneOpen)).toBe(likeliest(kind, 'open', 'diodes'))
    expect(await diodeTest(one.upper)).toBe(likeliest(kind, 'shorted', 'diodes'))
  })

  it('lets nothing back out of the battery until a diode of each side is shorted', async () => {
    // The answer of the check: "5 mA or more".
    const answer = (amps: number) => (amps < 5e-3 ? 'none' : 'drains')
    expect(answer(await drain({}))).toBe('none')
    const kind = 'rectifier-regulator'
    const alone = [await drain(one.upper), await drain(one.lower)].map(answer)
    expect(alone).toEqual(['none', 'none'])
    expect(likeliest(kind, 'shorted', 'standing-drain')).toBe('none')
    expect(answer(await drain(eachSide))).toBe('drains')
    expect(row(kind, 'shorted', 'standing-drain').drains).toBeGreaterThan(0.2)
  })

  it('passes a share of the charge that the world of the literal person knows', async () => {
    const lift = async (bridge: Bridge) => (await output(bridge, battery)).mean - 12.6
    const good = await lift({})
    const effect = (mode: string, random: () => number) =>
      effects['rectifier-regulator']![mode]!({ ...drawn, random }).gives!
    for (const each of [one.upper, one.lower]) {
      const gives = (await lift(each)) / good
      expect(gives).toBeGreaterThan(effect('shorted', () => 0))
      expect(gives).toBeLessThan(effect('shorted', () => 0.999) + 0.01)
    }
    expect((await lift(deadSide)) / good).toBeCloseTo(
      effect('open', () => 0),
      3,
    )
    // One open diode costs too little to bring anybody in: what brings them is more than that.
    expect((await lift(oneOpen)) / good).toBeGreaterThan(effect('open', () => 0.999))
  })

  it.each([22, 28, 35])(
    'charges from %d V as much of what 44 V charge as in that world',
    async (volts) => {
      const lift = async (volts: number) => (await output({}, battery, { volts })).mean - 12.6
      expect(
        Math.abs((await lift(volts)) / (await lift(44)) - chargeShare(volts, 44)),
      ).toBeLessThan(0.06)
    },
  )

  it('charges nothing from a winding that does not reach the battery', async () => {
    expect((await output({}, battery, { volts: 9 })).mean).toBeCloseTo(12.6, 2)
    expect(chargeShare(9, 44)).toBe(0)
  })
})
