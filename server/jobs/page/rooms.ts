import { prospects } from '../../diagnosis/verdict/explain.ts'
import { presentOthers } from '../beside/others.ts'
import { presentStands } from '../beside/stands.ts'
import { presentSuspects } from '../beside/suspects.ts'
import { presentTree } from '../beside/tree.ts'
import { presentTreeDrawing } from '../beside/tree-drawing.ts'
import { presentProspects } from '../check/prospects.ts'
import type { CheckView } from '../check/view.ts'
import { photoViews } from '../photos/present.ts'
import { presentReadings } from '../readings/present.ts'
import { presentTogether } from '../readings/together.ts'
import { type Asked, notListed, sameCheck } from '../standing/asked.ts'
import { type Room, rooms } from '../standing/rooms.ts'
import type { Standing } from '../standing/standing.ts'
import { toPutBack } from '../standing/way/way-to.ts'
import { suspectName } from '../words/names.ts'
import { counted, percent, upperFirst } from '../words/sentences.ts'
import type { RoomInside, RoomView } from './view.ts'

/** The rooms beside the work. What is in them is only worked out for those that are open. */
export function presentRooms(input: Standing & Asked, check?: CheckView): RoomView[] {
  return rooms
    .filter((room) => isThere(room, input, check))
    .map((room): RoomView => {
      const open = isOpen(room, input)
      return {
        name: room,
        title: titles[room],
        gist: gists[room](input, check),
        href: sameCheck(input, `${open ? 'close' : 'open'}=${room}`),
        ...(open && { inside: inside[room](input, check) }),
      }
    })
}

const titles: Readonly<Record<Room, string>> = {
  why: 'Why this check',
  answers: 'What each answer would do',
  readings: 'Readings so far',
  suspects: 'Suspects',
  tree: 'Fault tree',
  stands: 'As it stands',
  others: 'Other checks',
  found: 'I found it',
}

/** A reading that came back with a sentence is in sight, whatever is folded. */
function isOpen(room: Room, { rooms, takeRefused }: Asked): boolean {
  return rooms?.has(room) === true || (room === 'readings' && takeRefused !== undefined)
}

/** A room with nothing to say is not there at all. */
function isThere(room: Room, input: Standing & Asked, check?: CheckView): boolean {
  if (room === 'why') return check !== undefined
  if (room === 'answers') return check !== undefined && input.correcting === undefined
  // Of a repair the next thing is its proof, and after that there is nothing more to find.
  const last = input.folded.repairs.at(-1)
  if (room === 'found') return last === undefined || last.outcome === 'still there'
  return room !== 'stands' || apart(input) > 0
}

const apart = ({ asItStands }: Standing) => toPutBack(asItStands).length

/** What a folded room holds, in a few words. */
const gists: Readonly<Record<Room, (input: Standing, check?: CheckView) => string>> = {
  why: (_, check) => check?.why[0] ?? '',
  answers: () => '',
  readings: ({ folded }) => String(folded.readings.size || 'none'),
  suspects: ({ kase, walk, folded }) => {
    if (folded.conditions.who === 'apprentice') return 'first make a guess of your own'
    const [first] = walk.suspects
    if (first === undefined) return ''
    return `${upperFirst(suspectName(kase, first.part))}, ${percent(first.probability)}`
  },
  tree: () => '',
  stands: (input) => `${counted(apart(input), 'thing')} apart, off or fitted`,
  others: ({ walk }, check) =>
    String(walk.proposals.filter((proposal) => proposal.check !== check?.id).length || 'none'),
  found: () => 'seen with your own eyes',
}

const inside: Readonly<Record<Room, (input: Standing & Asked, check?: CheckView) => RoomInside>> = {
  why: (input, check) => ({
    room: 'why',
    why: check?.why ?? [],
    ...(input.folded.conditions.who === 'apprentice' && { learnHref: learnHref(input.kase) }),
  }),
  answers: (input, check) => {
    const card = check && input.kase.checks.get(check.id)
    const foreseen = foreseenBy(input, check)
    return {
      room: 'answers',
      prospects: card ? presentProspects(input.kase, card, foreseen) : [],
    }
  },
  readings: (input) => ({
    room: 'readings',
    readings: presentReadings(input),
    together: presentTogether(input),
    photos: photoViews(input, input.photos ?? []),
    photosHref: `/jobs/${input.job.id}/photos`,
  }),
  suspects: (input) => ({ room: 'suspects', suspects: presentSuspects(input) }),
  tree: (input, check) => ({
    room: 'tree',
    tree: presentTree(input),
    drawing: presentTreeDrawing(input, foreseenBy(input, check)),
  }),
  stands: (input) => ({ room: 'stands', stands: presentStands(input) }),
  others: (input, check) => ({ room: 'others', others: presentOthers(input, check?.id) }),
  found: ({ job, kase }) => ({
    room: 'found',
    action: `/jobs/${job.id}`,
    parts: [
      ...[...kase.parts.values()].map(({ id, name }) => ({ id, name: upperFirst(name) })),
      { id: notListed, name: upperFirst(suspectName(kase, null)) },
    ],
  }),
}

const learnHref = ({ complaint, machine }: Standing['kase']): string =>
  `/learn/${encodeURIComponent(complaint.id)}?${new URLSearchParams({ machine: machine.id })}`

function foreseenBy({ kase, evidence }: Standing, check?: CheckView) {
  return check ? prospects(kase.model, evidence, check.id) : []
}
