import { z } from 'zod'

interface JsonSchema {
  readonly properties?: Readonly<Record<string, JsonSchema>>
  readonly required?: readonly string[]
  readonly items?: JsonSchema
  readonly additionalProperties?: JsonSchema | false
  readonly oneOf?: readonly JsonSchema[]
  readonly const?: string
}

/** What an object must and may say, in the order of the alphabet. */
export interface Saying {
  readonly must: readonly string[]
  readonly may: readonly string[]
}

/**
 * Every object that a schema asks for, by the key that it stands under: the whole by the name given,
 * one of several kinds by "about a gate". What may be one thing or another without a kind is left out.
 */
export function objectsIn(schema: z.ZodType, name: string): ReadonlyMap<string, Saying> {
  const found = new Map<string, Saying>()
  const visit = (key: string, json: JsonSchema): void => {
    const { properties = {}, required = [], items, additionalProperties, oneOf = [] } = json
    const keys = Object.keys(properties).filter((each) => each !== '$schema')
    if (keys.length > 0) {
      const may = keys.filter((each) => !required.includes(each))
      found.set(key, { must: [...required].sort(), may: may.sort() })
    }
    for (const each of keys) visit(each, properties[each]!)
    if (items) visit(key, items)
    if (additionalProperties) visit(key, additionalProperties)
    for (const each of oneOf) visit(`${key} a ${each.properties!.kind!.const}`, each)
  }
  visit(name, z.toJSONSchema(schema, { io: 'input' }) as JsonSchema)
  return found
}
