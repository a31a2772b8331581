import { connectorFace } from '../../drawings/connector-face.ts'
import type { Spot } from '../../knowledge/case.ts'
import type { Colours } from '../../knowledge/schema/tables.ts'
import { sentence, upperFirst } from '../words/sentences.ts'
import type { ProbeView, SpotView, WireView } from './view.ts'

/**
 * Where the probes go: in words, by wire, and as a drawing where there is a connector.
 *
 * @param at whether the connector is apart while it is read, and the part lies on the bench by itself; and whether it
 * is only looked at, which no probe has a place in
 */
export function presentSpot(
  { says, connector, touch, awkward }: Spot,
  colours: Colours,
  {
    isApart,
    loose = false,
    looked = false,
  }: {
    readonly isApart: boolean
    readonly loose?: boolean | undefined
    readonly looked?: boolean
  },
): SpotView {
  const card = connector?.card
  // Joined, it is read from behind, where the wires go in.
  const view = card && `${upperFirst(card.face.view)}${isApart ? '' : mirrored}`
  const pins = Object.entries(card?.pins ?? {})
  const wires = new Map(pins.map(([pin, { wire }]) => [pin, wireView(wire, colours)]))
  return {
    says: upperFirst(says),
    ...(card && { where: sentence(card.where) }),
    ...(awkward && { awkward: awkwardWords }),
    probes: (looked ? [] : touch)
      .filter((place) => place !== '')
      .map((place, i): ProbeView => {
        const pin = card?.pins[place]
        const wire = wires.get(place)
        return {
          label: 'AB'.charAt(i),
          says: pin ? `pin ${place}, ${pin.to}` : placeWords(place, loose),
          ...(wire && { wire }),
        }
      }),
    ...(card && {
      face: {
        view: view ?? '',
        svg: connectorFace({
          ...card.face,
          touch: touch.filter((place) => place !== ''),
          label: `${upperFirst(card.name)}, ${card.face.view}`,
          pins: Object.fromEntries(wires),
        }),
      },
    }),
  }
}

const mirrored = '; from the wire side left and right are exchanged'

const awkwardWords =
  'Hard to touch well here: touch twice before you believe a reading that condemns a part.'

function placeWords(place: string, loose: boolean): string {
  if (place !== 'ground') return place
  return loose ? 'bare metal of the core' : 'bare metal of the engine'
}

/** "BK/RD", "black with red tracer", and the classes of its swatch. */
export function wireView(codes: readonly string[], { colours }: Colours): WireView {
  const [base, ...tracers] = codes.map((code) => colours[code]?.name ?? code)
  return {
    code: codes.join('/'),
    name: tracers.length > 0 ? `${base} with ${tracers.join(' and ')} tracer` : `${base}`,
    swatches: codes.map((code) => `wire-${code.toLowerCase()}`),
  }
}
