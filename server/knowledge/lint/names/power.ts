import type { Circuit } from '../../schema/wiring/circuit.ts'
import type { Place } from '../../schema/wiring/power.ts'

type Pin = readonly [plug: string, pin: number]

/** Parts that are named in what flows at work. */
export function partsAtWork({ power, secondaries = {} }: Circuit): readonly string[] {
  const { windings, regulator, battery, charger, relay, spans, fuses, loads } = power ?? {}
  const named = [regulator, battery, charger, relay, ...(loads ?? [])]
  return [
    ...Object.keys({ ...windings, ...spans, ...secondaries }),
    ...named.flatMap((each) => each?.part ?? []),
    ...(charger ? [charger.winding] : []),
    ...(fuses ?? []),
    ...Object.values(secondaries).flatMap(({ towers }) =>
      towers.flatMap(({ lead, cap }) => [lead, cap]),
    ),
  ]
}

/** Pins that are named in what flows at work. */
export function pinsAtWork({ power, secondaries = {} }: Circuit): readonly Pin[] {
  const { regulator, battery, charger, relay, spans = {}, links = [], loads = [] } = power ?? {}
  const places: readonly (Place | undefined)[] = [
    ...[regulator?.in, regulator?.back, regulator?.out, regulator?.ground],
    ...[charger?.out, charger?.ground, charger?.sense, battery?.plus, battery?.minus],
    ...[...Object.values(spans), ...links, relay?.at ?? [], ...loads.map(({ at }) => at)].flat(),
    ...Object.values(secondaries).map(({ end }) => end),
  ]
  return places.flatMap((place) => (typeof place === 'object' ? [place] : []))
}
