import type { FastifyReply, FastifyRequest } from 'fastify'
import { textOf } from '../../web/fields.ts'
import { type Room, roomsAfter, roomsIn } from '../standing/rooms.ts'

/**
 * The rooms of this job that are open, as its cookie remembers them and as this request opens or closes
 * one (`?open=tree`, `?close=tree`); the cookie is brought up to date.
 *
 * @param usual those that are open as long as nobody has opened or closed one
 */
export function openRooms(
  request: FastifyRequest,
  reply: FastifyReply,
  job: number,
  usual: readonly Room[],
): ReadonlySet<Room> {
  const kept = roomsIn(request.cookies.rooms ?? usual.join('.'))
  const opened = textOf(request.query, 'open')
  const closed = textOf(request.query, 'close')
  if (opened === '' && closed === '') return kept
  const now = roomsAfter(kept, { opened, closed })
  reply.setCookie('rooms', [...now].join('.'), {
    path: `/jobs/${job}`,
    httpOnly: true,
    sameSite: 'strict',
  })
  return now
}
