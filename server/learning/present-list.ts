import { counted } from '../jobs/words/sentences.ts'
import { fits } from '../knowledge/fits.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { learnHref, wordsHref } from './words/hrefs.ts'

/** All that can be learned. */
export interface ListPage {
  readonly title: string
  readonly lead: string
  readonly wordsHref: string
  readonly groups: readonly {
    readonly id: string
    readonly name: string
    readonly complaints: readonly ComplaintLine[]
  }[]
}

interface ComplaintLine {
  readonly href: string
  readonly title: string
  /** What the owner says. */
  readonly owner: string
  /** "5 machines" */
  readonly on: string
}

/** The complaints by group; those that fit no machine here have no order to teach. */
export function presentList({ complaints, machines, groups }: Knowledge): ListPage {
  const lines = [...complaints.values()].flatMap((complaint) => {
    const on = [...machines.values()].filter((machine) => fits(complaint, machine)).length
    const { id, title, owner, group } = complaint
    return on === 0
      ? []
      : [{ group, href: learnHref(id), title, owner, on: counted(on, 'machine') }]
  })
  return {
    title: 'Learn the order',
    lead:
      lines.length === 0
        ? 'There is no machine here yet, and so no order to learn.'
        : 'Each complaint has a page: the whole tree of what can be behind it, the first checks in their order, and why they come first.',
    wordsHref,
    groups: Object.entries(groups.groups)
      .map(([id, { name }]) => ({
        id,
        name,
        complaints: lines.filter(({ group }) => group === id),
      }))
      .filter((group) => group.complaints.length > 0),
  }
}
