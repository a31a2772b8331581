import type { Unit } from './units.ts'

/** What a meter can be set to, with the unit its ranges are in. A new setting is one row. */
export const settings = {
  resistance: { says: 'ohms', unit: 'Ω' },
  'ac-voltage': { says: 'AC volts', unit: 'V' },
  'dc-voltage': { says: 'DC volts', unit: 'V' },
  capacitance: { says: 'capacitance', unit: 'µF' },
} as const satisfies Readonly<Record<string, { readonly says: string; readonly unit: Unit }>>

export type Setting = keyof typeof settings
export const settingNames = Object.keys(settings) as readonly Setting[]

/** One of each for every setting. */
export function bySetting<T>(make: (setting: Setting) => T): Readonly<Record<Setting, T>> {
  const entries = settingNames.map((setting) => [setting, make(setting)])
  return Object.fromEntries(entries) as Record<Setting, T>
}
