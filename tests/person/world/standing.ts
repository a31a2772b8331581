/** What is apart, off and fitted on the machine: all that the person's hands have done to it so far. */
export interface Standing {
  /** Connectors pulled apart. */
  readonly apart: ReadonlySet<string>
  /** Covers taken off; a rope starter may be one of them. */
  readonly off: ReadonlySet<string>
  readonly flywheelBare: boolean
  /** By output. */
  readonly plugs: Readonly<Record<string, 'in' | 'out'>>
  /** By output: what the cap holds. */
  readonly caps: Readonly<Record<string, Cap>>
  /** Outputs whose lead is unscrewed from its coil, and those whose cap is unscrewed from its lead. */
  readonly leadOff: ReadonlySet<string>
  readonly capOff: ReadonlySet<string>
  /** Outputs that hold a new plug, in the cylinder or in the cap. */
  readonly newPlug: ReadonlySet<string>
  /** Pairs of parts that stand exchanged: each sits where the sheet has the other. */
  readonly swapped: ReadonlySet<string>
  /** Parts for which a known good one stands in. */
  readonly standIns: ReadonlySet<string>
  /** Where the jumper lead is. */
  readonly jumper: Jumper | null
  readonly lampsOut: boolean
  /** A lamp that is known to burn sits in one holder. */
  readonly goodLamp: boolean
  readonly fuseOut: boolean
  readonly batteryGroundOff: boolean
  readonly batteryOut: boolean
  readonly charged: boolean
  readonly fuelOff: boolean
  /** Interlock switches that are let go, as when the rider leaves the machine. */
  readonly letGo: ReadonlySet<string>
  readonly stopSwitch: 'RUN' | 'OFF'
  readonly tether: 'on' | 'pulled'
  readonly lamps: 'on' | 'off'
  /** It should have been run until it is hot, and could not be started. */
  readonly couldNotRun: boolean
  /** Minutes on the clock when it last ran until it was hot. */
  readonly hotAt: number | null
  /** Minutes on the clock when leads and caps were last misted. */
  readonly wetAt: number | null
}

export type Cap = 'on its plug' | 'off' | 'on a grounded plug' | 'on a tester'
export type Jumper =
  | 'igniter'
  | 'pump-driver'
  | 'regulator'
  | 'lamp-switch'
  | 'stop wire'
  | 'run wire'
  | 'supply'
  | 'relay'

/** What a step does to the machine. */
export type Change = (standing: Standing) => Standing

/** The machine as it came in. */
export function allTogether(outputs: readonly string[]): Standing {
  const each = <T>(value: T) => Object.fromEntries(outputs.map((output) => [output, value]))
  const none: ReadonlySet<string> = new Set()
  return {
    apart: none,
    off: none,
    flywheelBare: false,
    plugs: each('in' as const),
    caps: each<Cap>('on its plug'),
    leadOff: none,
    capOff: none,
    newPlug: none,
    swapped: none,
    standIns: none,
    jumper: null,
    lampsOut: false,
    goodLamp: false,
    fuseOut: false,
    batteryGroundOff: false,
    batteryOut: false,
    charged: false,
    fuelOff: false,
    letGo: none,
    stopSwitch: 'RUN',
    tether: 'on',
    lamps: 'on',
    couldNotRun: false,
    hotAt: null,
    wetAt: null,
  }
}

export const doing =
  (changes: readonly Change[]): Change =>
  (standing) =>
    changes.reduce((now, change) => change(now), standing)

type SetField =
  | 'apart'
  | 'off'
  | 'leadOff'
  | 'capOff'
  | 'newPlug'
  | 'swapped'
  | 'standIns'
  | 'letGo'

export const add =
  (field: SetField, ...names: readonly string[]): Change =>
  (standing) => ({ ...standing, [field]: new Set([...standing[field], ...names]) })

export const remove =
  (field: SetField, ...names: readonly string[]): Change =>
  (standing) => ({
    ...standing,
    [field]: new Set([...standing[field]].filter((name) => !names.includes(name))),
  })

export const having =
  (fields: Partial<Standing>): Change =>
  (standing) => ({ ...standing, ...fields })

export const caps =
  (cap: Cap, ...outputs: readonly string[]): Change =>
  (standing) => ({
    ...standing,
    caps: { ...standing.caps, ...Object.fromEntries(outputs.map((output) => [output, cap])) },
  })

export const plugs =
  (plug: 'in' | 'out', ...outputs: readonly string[]): Change =>
  (standing) => ({
    ...standing,
    plugs: { ...standing.plugs, ...Object.fromEntries(outputs.map((output) => [output, plug])) },
  })

/** Two parts change places; once more, and they are back. */
export const exchange =
  (one: string, other: string): Change =>
  (standing) => {
    const pair = pairOf(one, other)
    return standing.swapped.has(pair)
      ? remove('swapped', pair)(standing)
      : add('swapped', pair)(standing)
  }

const pairOf = (one: string, other: string) => [one, other].sort().join(' and ')

/** The part that sits where the sheet has this one. */
export function sittingAt({ swapped }: Standing, part: string): string {
  const pair = [...swapped].map((each) => each.split(' and ')).find((each) => each.includes(part))
  return pair?.find((each) => each !== part) ?? part
}

/** Whatever of these stood exchanged is back in its place. */
export const backInPlace =
  (parts: readonly string[]): Change =>
  (standing) =>
    remove(
      'swapped',
      ...[...standing.swapped].filter((pair) => parts.includes(pair.split(' and ')[0]!)),
    )(standing)
