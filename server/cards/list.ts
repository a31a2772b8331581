import { complaintsFor } from '../knowledge/fits.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { machineName } from '../knowledge/machine-name.ts'
import type { Machine } from '../knowledge/schema/machine.ts'
import { counted } from '../web/words.ts'
import { cardTools, isOwner } from './drawing/tools.ts'
import { cardHref } from './hrefs.ts'

/** All cards of a machine: complaints by tools. */
export interface CardsListPage {
  readonly title: string
  readonly says: string
  readonly back: { readonly href: string; readonly text: string }
  /** One column for each set of tools, in words and with the book of all its cards. */
  readonly tools: readonly {
    readonly name: string
    readonly forWhom: string
    readonly book: { readonly href: string; readonly text: string }
  }[]
  readonly rows: readonly {
    readonly complaint: string
    readonly cards: readonly {
      readonly href: string
      readonly tools: string
      readonly label: string
    }[]
  }[]
}

export function presentList(knowledge: Knowledge, machine: Machine): CardsListPage {
  const complaints = complaintsFor(knowledge, machine.id)
  const tools = cardTools(knowledge)
  return {
    title: `Pocket cards of the ${machineName(machine)}`,
    says: 'A card is one page: save it on a phone or print it on two sheets, and it works without a network. Choose what will be at hand where it is used.',
    back: { href: `/machines/${encodeURIComponent(machine.id)}`, text: 'Limits of this machine' },
    tools: tools.map((each) => ({
      name: each.name,
      forWhom: isOwner(each) ? 'In an owner’s words' : 'In a technician’s words',
      book: {
        href: cardHref(machine.id, 'book', each.id),
        text: `Book of all ${counted(complaints.length, 'card')}`,
      },
    })),
    rows: complaints.map(({ id, title }) => ({
      complaint: title,
      cards: tools.map((each) => ({
        href: cardHref(machine.id, id, each.id),
        tools: each.name,
        label: `${title}: ${each.name.toLowerCase()}`,
      })),
    })),
  }
}
