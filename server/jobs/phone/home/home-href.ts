import type { Standing } from '../../standing/standing.ts'

/**
 * Where it is said how they get home.
 *
 * @param begun they are in the middle of a check, or of putting something right
 */
export const homeHref = ({ id }: Standing['job'], begun: boolean): string =>
  `/jobs/${id}/home${begun ? '?begun=yes' : ''}`
