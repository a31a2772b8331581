/** What was said of a part before it was repaired, 0 to 1, and whether it was the cause. */
export interface Said {
  readonly chance: number
  readonly right: boolean
}

export interface Calibration {
  /** From and below which chance; the last tenth holds 1 as well. */
  readonly from: number
  readonly to: number
  readonly said: number
  readonly right: number
  /** Where the true share lies, nineteen times in twenty. */
  readonly interval: readonly [number, number]
}

/** How often it was as said, by tenths of the chance; tenths of which nothing was said are left out. */
export function byTenths(all: readonly Said[]): Calibration[] {
  return Array.from({ length: 10 }, (_, tenth) => {
    const these = all.filter(({ chance }) => tenthOf(chance) === tenth)
    return { from: tenth / 10, to: (tenth + 1) / 10, ...hitsAmong(these) }
  }).filter(({ said }) => said > 0)
}

/** Which tenth, from 0 to 9, by whole percents as they are printed: what shows as 90 % is nine in ten. */
export const tenthOf = (chance: number): number =>
  Math.min(9, Math.floor(Math.round(chance * 100) / 10))

/** How many were as said, and between which shares the true one lies. */
export function hitsAmong(
  these: readonly Said[],
): Pick<Calibration, 'said' | 'right' | 'interval'> {
  const right = these.filter((each) => each.right).length
  return { said: these.length, right, interval: wilson(right, these.length) }
}

/** 97.5th percentile of the normal distribution. */
const z = 1.959964

/**
 * Interval for a share of which `right` of `all` were seen, 95 % of the time (Wilson, Journal of the
 * American Statistical Association 22, 1927): it says something sensible of few cases, and of all or none.
 * From 0 to 1 where nothing was seen.
 */
export function wilson(right: number, all: number): readonly [number, number] {
  if (all === 0) return [0, 1]
  const share = right / all
  const middle = share + z ** 2 / (2 * all)
  const half = z * Math.sqrt((share * (1 - share)) / all + (z / (2 * all)) ** 2)
  const width = 1 + z ** 2 / all
  return [Math.max(0, (middle - half) / width), Math.min(1, (middle + half) / width)]
}
