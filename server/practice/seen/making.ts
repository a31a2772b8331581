/** How a check is made: for the how-manieth time, from 1, how fast the engine is turned, what stands apart, off or fitted. */
export interface Making {
  readonly take: number
  readonly pull: Pull
  /** Names of set-ups, those that the check itself makes among them. */
  readonly stands: ReadonlySet<string>
}

/** Of a rope or a starter, rpm at the middle of how people pull. From memory. */
export const pulls = { slow: 300, brisk: 520, hard: 680 } as const
export type Pull = keyof typeof pulls
export const isPull = (text: string): text is Pull => text in pulls
