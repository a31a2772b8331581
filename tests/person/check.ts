import type { CheckCard } from '../../server/knowledge/case.ts'
import { servedBy } from '../../server/practice/world/sheet.ts'
import type { Seen } from './seen.ts'
import type { Site } from './world/site.ts'

/** A check as it stands on the page, at the machine. */
export interface CheckHere {
  readonly site: Site
  readonly card: CheckCard
  /** Name of its kind, as its file in `trees/checks/` has it. */
  readonly kind: string
  /** Part it is about, by the place it has on the sheet; empty where it is about none. */
  readonly part: string
  /** Output it is about; empty where it is about none or all. */
  readonly output: string
  /** The printed steps, for whoever has to know what the page asks for. */
  readonly words: string
  /** The hand slips this time: another pin, or a factor of a thousand forgotten. */
  readonly slip: 'none' | 'other pin' | 'thousand'
}

/** What comes back from a check, from the world alone. */
export type Observation = (check: CheckHere) => Seen

/** Which part and which output a check is about, read off its name: `kind.part.plug`, `kind.output`. */
export function aboutOf(card: CheckCard, site: Site): Pick<CheckHere, 'kind' | 'part' | 'output'> {
  const { machine } = site.world
  const [kind = '', name = ''] = card.id.split('.')
  const part = machine.parts.find(({ id }) => id === name) ?? partOf(card, site)
  const output = machine.outputs.find(({ id }) => id === name)?.id ?? (part && servedBy(part)[0])
  const only = machine.outputs.length === 1 ? machine.outputs[0]!.id : ''
  return { kind, part: part?.id ?? '', output: output ?? only }
}

const partOf = ({ part }: CheckCard, { world }: Site) =>
  world.machine.parts.find(({ id }) => id === part)
