import { usualAir } from '../../jobs/measuring/warmth.ts'
import { toolsInKit, usualTools } from '../../jobs/opening/tool-sets.ts'
import type { Conditions } from '../../jobs/record/events.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { usualMeter } from '../../knowledge/meters.ts'

/** What somebody has with them who goes by a card. */
export interface CardTools {
  /** As an address names it. */
  readonly id: string
  readonly name: string
  /** As a job would have them. */
  readonly conditions: Conditions
}

/** The sets of tools, then what owners carry, in the order of their files. */
export function cardTools(knowledge: Knowledge): CardTools[] {
  const { tools, owner } = knowledge
  const meter = usualMeter(knowledge)
  const usual = usualTools(knowledge)
  const common = { air: usualAir, engine: 'cold' } as const
  return [
    ...Object.entries(tools.sets).map(([id, { name, place = 'trailside' }]): CardTools => {
      const conditions = { ...common, where: place, tools: usual[id] ?? [], meter }
      return { id, name, conditions: { ...conditions, who: 'self' } }
    }),
    ...Object.entries(owner.sets).map(([id, { name, kit }]): CardTools => {
      const conditions = {
        ...common,
        where: 'trailside',
        tools: toolsInKit(knowledge, kit),
      } as const
      return { id, name, conditions: { ...conditions, meter: owner.meter, who: 'owner', kit } }
    }),
  ]
}

export const isOwner = ({ conditions }: Pick<CardTools, 'conditions'>): boolean =>
  conditions.who === 'owner'
