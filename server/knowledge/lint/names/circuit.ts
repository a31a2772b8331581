import type { Knowledge } from '../../knowledge.ts'
import type { Circuit } from '../../schema/wiring/circuit.ts'
import type { Report } from '../report.ts'
import type { MustKnow } from './must-know.ts'
import { partsAtWork, pinsAtWork } from './power.ts'

/** A circuit names parts and pins of its machine. Where that is gone, nobody can say, and it is a doubt alone. */
export function circuitNames(
  circuit: Circuit,
  { machines }: Knowledge,
  mustKnow: MustKnow,
  report: Report,
): void {
  const machine = machines.get(circuit.id)
  if (machine === undefined) return
  const parts = machine.parts.map(({ id }) => id)
  for (const section of ofParts) {
    mustKnow(circuit, [section], 'part', Object.keys(circuit[section] ?? {}), parts)
  }
  mustKnow(circuit, ['inLine'], 'part', Object.values(circuit.inLine ?? {}), parts)
  circuit.boxes?.forEach(({ part }, b) => {
    mustKnow(circuit, ['boxes', b, 'part'], 'part', [part], parts)
  })
  mustKnow(circuit, ['power'], 'part', partsAtWork(circuit), parts)
  const { runsBy = [], turnsBy = [] } = circuit
  const connectors = Object.keys(machine.connectors)
  mustKnow(circuit, ['runsBy'], 'connector', runsBy, connectors)
  mustKnow(circuit, ['turnsBy'], 'connector', turnsBy, connectors)
  const plugs = [...connectors, ...(circuit.beyond ?? [])]
  const atWork = { path: ['power'], pins: pinsAtWork(circuit) }
  for (const { path, pins } of [...pinsIn(circuit), atWork]) {
    mustKnow(
      circuit,
      path,
      'connector',
      pins.map(([plug]) => plug),
      plugs,
    )
    for (const [plug, pin] of pins) {
      const wired = machine.connectors[plug]?.pins
      if (wired && !(String(pin) in wired)) report.add(circuit, path, `${plug} has no pin ${pin}`)
    }
  }
}

const ofParts = [
  'ends',
  'grounded',
  'legs',
  'wires',
  'grounds',
  'joints',
  'inLine',
  'keys',
] as const

interface Named {
  readonly path: readonly PropertyKey[]
  readonly pins: readonly (readonly [plug: string, pin: number])[]
}

/** Every pin that a circuit names, and where. */
function pinsIn({ ends, grounded, legs, wires, grounds, joints, keys, boxes }: Circuit): Named[] {
  const each = <Value>(section: string, of: Record<string, Value> = {}, pins: Pins<Value>) =>
    Object.entries(of).map(([name, value]) => ({ path: [section, name], pins: pins(value) }))
  return [
    ...each('ends', ends, onOnePlug),
    ...each('grounded', grounded, (pin) => [pin]),
    ...each('legs', legs, onOnePlug),
    ...each('wires', wires, (all) =>
      all.flatMap(([from, a, to, b]): Named['pins'] => [
        [from, a],
        [to, b],
      ]),
    ),
    ...each('grounds', grounds, (pins) => pins),
    ...each('joints', joints, (pins) => pins),
    ...each('keys', keys, ({ plug, feed, run, start }) => onOnePlug([plug, feed, run, start])),
    ...(boxes ?? []).map(({ inputs, outputs, ground, stop, run }, b) => ({
      path: ['boxes', b],
      pins: [
        ...[...inputs, ...outputs].flatMap(onOnePlug),
        ...[ground, stop, run].flatMap((pin) => (pin === undefined ? [] : [pin])),
      ],
    })),
  ]
}

type Pins<Value> = (value: Value) => Named['pins']

const onOnePlug = ([plug, ...pins]: readonly [string, ...number[]]): Named['pins'] =>
  pins.map((pin) => [plug, pin])
