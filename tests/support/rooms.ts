import type { JobPage, RoomInside } from '../../server/jobs/page/view.ts'
import { type Room, rooms } from '../../server/jobs/standing/rooms.ts'

/** Every room open: for tests of what is in them. */
export const allRooms: ReadonlySet<Room> = new Set(rooms)

/** The cookie of whoever has opened these rooms. */
export const roomsCookie = (open: readonly Room[]) => ({ name: 'rooms', value: open.join('.') })

/** The cookie of whoever has opened every room. */
export const allRoomsCookie = roomsCookie(rooms)

/** What an open room of a page holds. */
export function inRoom<R extends Room>(page: JobPage, room: R): Extract<RoomInside, { room: R }> {
  const inside = page.rooms.find(({ name }) => name === room)?.inside
  if (inside?.room !== room) throw new Error(`the room ${room} is not open on this page`)
  return inside as Extract<RoomInside, { room: R }>
}
