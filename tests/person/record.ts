/** What a job came to, and what went wrong on the way. */
export interface JobRecord {
  readonly seed: number
  readonly complaint: string
  readonly machine: string
  readonly climate: string
  readonly place: string
  /** `part.mode` of what is hidden; empty where the cause lies in no tree. */
  readonly hidden: readonly string[]
  /** Of the first verdict. */
  readonly outcome: 'right' | 'wrong' | 'undecided'
  /** Wrong, and a good part above the threshold was condemned. */
  readonly dear: boolean
  /** Parts of the first verdict, and the chance that it states; null where it names none. */
  readonly named: readonly string[] | null
  readonly stated: number | null
  /** How it ended after all repairs. */
  readonly end: 'mended' | 'outside' | 'undecided' | 'gave up'
  /** Up to the first verdict. */
  readonly checks: number
  readonly minutes: number
  readonly incidents: readonly Incident[]
  readonly said: readonly string[]
}

/** Something that the page brought about and did not mean. */
export interface Incident {
  readonly kind: IncidentKind
  readonly check: string
  /** Page said, world did. */
  readonly says: string
}

export const incidentKinds = {
  barred: 'its way barred by what a page had taken off or apart',
  'own way barred': 'its way barred by its own set-ups, on any machine of that kind',
  spoilt: 'read with something left apart that changed the reading',
  'stop wire off': 'cranked or run with the stop wire off, and no word of it on the page',
  'plug apart': 'cranked or run with a plug apart that the check does not need apart',
  'asked in vain': 'asked once more for what could not be told',
  'proof spoilt': 'the right part was new, and what stood apart kept the complaint alive',
  'proof barred': 'the complaint could not be tried with what stood apart or off',
} as const
export type IncidentKind = keyof typeof incidentKinds
