import type { FastifyRequest } from 'fastify'
import type { ErrorText } from '../../web/errors.ts'
import { textOf, wholeOf } from '../../web/fields.ts'
import type { PracticeParts } from '../record/parts.ts'
import { type RoundStanding, roundStanding } from './standing.ts'

/** The round that an address names, or what to say instead. */
export async function findRound(
  { knowledge, rounds }: PracticeParts,
  request: FastifyRequest,
): Promise<RoundStanding | ErrorText> {
  const id = wholeOf(textOf(request.params, 'id'))
  const round = id === null ? null : await rounds.load(id)
  if (round === null) {
    return { status: 404, title: 'No such round', says: 'There is no round with this number.' }
  }
  const outlived: ErrorText = {
    status: 409,
    title: 'The knowledge has changed',
    says: `Round ${round.id} is kept, but its machine or its complaint is no longer among the trees.`,
  }
  return roundStanding(knowledge, round) ?? outlived
}

export const isFound = (found: RoundStanding | ErrorText): found is RoundStanding =>
  'round' in found
