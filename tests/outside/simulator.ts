import { Simulation } from 'eecircuit-engine'

let started: Promise<Simulation> | undefined

/**
 * Runs a netlist in ngspice and gives each vector it saved, by name: `v(node)`, `time`. One run at a
 * time: the engine keeps one netlist.
 */
export async function simulate(netlist: string): Promise<ReadonlyMap<string, readonly number[]>> {
  started ??= start()
  const simulation = await started
  simulation.setNetList(netlist)
  const result = await simulation.runSim()
  const errors = simulation.getError()
  if (errors.length > 0) throw new Error(`${errors.join('\n')}\nin\n${netlist}`)
  if (result.dataType !== 'real') throw new Error('only real vectors are read here')
  return new Map(result.data.map(({ name, values }) => [name, values]))
}

async function start(): Promise<Simulation> {
  const simulation = new Simulation()
  await simulation.start()
  return simulation
}

/** The DC voltage of every node. */
export async function operatingPoint(circuit: string): Promise<(node: string) => number> {
  const vectors = await simulate(`${circuit.trim()}\n.op\n.end`)
  return (node) => {
    const value = vectors.get(`v(${node})`)?.[0]
    if (value === undefined) throw new Error(`no node ${node}`)
    return value
  }
}

/** Mean, least and most of a vector over time, from `from` on. */
export function over(vectors: ReadonlyMap<string, readonly number[]>, name: string, from = 0) {
  const [time, values] = [vectors.get('time')!, vectors.get(name)!]
  const first = time.findIndex((t) => t >= from)
  let area = 0
  for (let i = first + 1; i < time.length; i += 1) {
    area += ((values[i]! + values[i - 1]!) / 2) * (time[i]! - time[i - 1]!)
  }
  const shown = values.slice(first)
  const least = shown.reduce((a, b) => Math.min(a, b))
  const most = shown.reduce((a, b) => Math.max(a, b))
  return { mean: area / (time.at(-1)! - time[first]!), least, most }
}
