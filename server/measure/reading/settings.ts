import type { Unit } from './units.ts'

interface SettingRow {
  readonly says: string
  readonly unit: Unit
  /** What reads it: a meter is chosen for each job, a gauge is one of the tools. */
  readonly instrument: string
  /** What to type, completes "Type …". */
  readonly shows: string
  /** The same in a few words, before the unit: "Reading, in Ω". */
  readonly label: string
}

const meter = { instrument: 'meter', shows: 'what the meter shows', label: 'Reading' } as const

/** What a meter can be set to, or which gauge reads it, with the unit its ranges are in. A new one is one row. */
export const settings = {
  resistance: { ...meter, says: 'ohms', unit: 'Ω' },
  'ac-voltage': { ...meter, says: 'AC volts', unit: 'V' },
  'dc-voltage': { ...meter, says: 'DC volts', unit: 'V' },
  capacitance: { ...meter, says: 'capacitance', unit: 'µF' },
  gap: {
    says: 'feeler gauge',
    unit: 'mm',
    instrument: 'feeler gauge',
    shows: 'the thickest blade that goes in, 0 where none does',
    label: 'Thickest blade that goes in',
  },
  'piston-travel': {
    says: 'dial gauge',
    unit: 'mm',
    instrument: 'dial gauge',
    shows: 'how far the piston stands before the top',
    label: 'Before the top',
  },
  angle: {
    says: 'degree wheel',
    unit: '°',
    instrument: 'degree wheel',
    shows: 'how far the crankshaft stands before the top',
    label: 'Before the top',
  },
} as const satisfies Readonly<Record<string, SettingRow>>

export type Setting = keyof typeof settings
export const settingNames = Object.keys(settings) as readonly Setting[]

/** Read off the meter of the job; the others by a gauge among the tools. */
export const byMeter = (setting: Setting): boolean =>
  settings[setting].instrument === meter.instrument
export const meterSettings = settingNames.filter(byMeter)
export const gaugeSettings = settingNames.filter((setting) => !byMeter(setting))

/** One of each for every setting. */
export function bySetting<T>(make: (setting: Setting) => T): Readonly<Record<Setting, T>> {
  const entries = settingNames.map((setting) => [setting, make(setting)])
  return Object.fromEntries(entries) as Record<Setting, T>
}
