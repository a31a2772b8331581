import { entry, named } from '../../diagnosis/model/named.ts'
import { parseQuantityText } from '../../measure/reading/parse.ts'
import type { Quantities } from '../../measure/reading/quantities.ts'
import type { Unit } from '../../measure/reading/units.ts'
import type { Knowledge } from '../knowledge.ts'
import type { Machine, PartKind } from '../schema/index.ts'
import type { Part, Reach, SheetLimits } from '../schema/machine.ts'
import { wrongWithText } from './figures/quantity-words.ts'
import type { Report } from './report.ts'

/** Limits are the right way up and in a fitting unit, and every place to touch is one that exists. */
export function sheetsRule(knowledge: Knowledge, report: Report): void {
  for (const [, machine] of knowledge.machines) {
    repeated(machine.parts.map(({ id }) => id)).forEach((id) => {
      report.add(machine, ['parts'], `two parts are called ${id}`)
    })
    machine.parts.forEach((part, p) => {
      const kind = named(knowledge.partKinds, part.kind)
      const add = (path: readonly PropertyKey[], says: string) =>
        report.add(machine, ['parts', p, ...path], `${part.id}: ${says}`)
      if (part.fedBy !== undefined && !machine.parts.some(({ id }) => id === part.fedBy)) {
        add(['fedBy'], `no part is called ${part.fedBy}`)
      }
      for (const [property, limits] of Object.entries(part.limits ?? {})) {
        for (const { side, says } of wrongWithLimits(limits, property, kind, knowledge.quantities))
          add(['limits', property, ...(side ? [side] : [])], says)
        if (!part.reach?.some((reach) => reach.for.includes(property))) {
          add(['limits', property], `say in reach where ${property} is read`)
        }
      }
      part.reach?.forEach((reach, r) => {
        for (const says of wrongWithReach(reach, machine)) add(['reach', r], says)
        for (const says of wrongWithProperties(reach, part, kind)) add(['reach', r], says)
      })
    })
    for (const [id, connector] of Object.entries(machine.connectors)) {
      const drawn = connector.face.rows.flat().filter((pin) => pin !== null)
      const unwired = Object.keys(connector.pins).filter((pin) => !drawn.includes(Number(pin)))
      for (const pin of unwired) {
        report.add(
          machine,
          ['connectors', id, 'pins', pin],
          `pin ${pin} is not on the face of ${id}`,
        )
      }
      for (const pin of repeated(drawn.map(String))) {
        report.add(
          machine,
          ['connectors', id, 'face'],
          `pin ${pin} stands twice on the face of ${id}`,
        )
      }
    }
  }
}

interface Wrong {
  /** Where it is one of the two limits. */
  readonly side?: 'low' | 'high'
  readonly says: string
}

function wrongWithLimits(
  limits: SheetLimits,
  property: string,
  kind: PartKind,
  quantities: Quantities,
): Wrong[] {
  const { quantity } = entry(kind.properties, property)
  if (quantity === 'answers')
    return [{ says: `${property} is looked at, not measured: it has no limits` }]
  const { unit, name, corrections } = entry(quantities, quantity)
  const { low, high } = limits
  if (low === undefined && high === undefined) return [{ says: 'give low, high or both' }]
  const texts = wrongTexts(limits, property, unit)
  if (texts.length > 0) return texts
  const [least, most] = [low, high].map((text) => text && parseQuantityText(text))
  if (least && most && least.value > most.value) {
    return [{ says: `the limits are upside down: low is ${low}, high is ${high}` }]
  }
  if (limits.rpm !== undefined && !corrections.includes('speed')) {
    return [{ says: `${name} is compared as it is read, whatever the speed: leave out rpm` }]
  }
  return []
}

function wrongTexts(limits: SheetLimits, property: string, unit: Unit): Wrong[] {
  return sides.flatMap((side) => {
    const text = limits[side]
    const wrong =
      text === undefined
        ? null
        : (withUnitOf(limits[side === 'low' ? 'high' : 'low'], text) ?? wrongWithText(text, unit))
    return wrong === null ? [] : [{ side, says: `${property} is given in ${unit}: ${wrong}` }]
  })
}

const sides = ['low', 'high'] as const

/** A number alone beside a limit with its unit is most likely meant in that: low 5 kΩ, high 7. */
function withUnitOf(beside: string | undefined, text: string): string | null {
  const [, unit] = /^[\d.]+(\D+)$/.exec(beside?.trim() ?? '') ?? []
  if (unit === undefined || !/^[\d.]+$/.test(text)) return null
  return parseQuantityText(`${text}${unit}`) === null ? null : `write ${text}${unit}`
}

function wrongWithReach(reach: Reach, machine: Machine): string[] {
  if ((reach.at === undefined) === (reach.touch === undefined)) {
    return ['write either at and pins, or touch']
  }
  if (reach.at === undefined) return []
  if (reach.pins === undefined) return [`say which pins of ${reach.at} to touch`]
  if (new Set(reach.pins).size < reach.pins.length) return ['name two pins, not one of them twice']
  const wired = entry(machine.connectors, reach.at).pins
  return reach.pins
    .filter((pin) => pin !== 'ground' && !(String(pin) in wired))
    .map((pin) => `${reach.at} has no pin ${pin} among its pins`)
}

function wrongWithProperties(reach: Reach, part: Part, kind: PartKind): string[] {
  return reach.for
    .filter((name) => entry(kind.properties, name).quantity !== 'answers')
    .filter((name) => part.limits?.[name] === undefined)
    .map((name) => `${name} is read here, so give its limits`)
}

function repeated(names: readonly string[]): string[] {
  return names.filter((name, i) => names.indexOf(name) !== i)
}
