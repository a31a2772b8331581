/** The face of a connector, as the sheet has it, and where the probes go. */
export interface FaceOptions {
  /**
   * Pin numbers as one looks into the face; null is a cavity without a pin. Of a round connector each
   * row is a circle, outermost first, clockwise from the top; a circle of one is the centre.
   */
  readonly rows: readonly (readonly (number | null)[])[]
  readonly latch: 'top' | 'bottom' | 'left' | 'right' | 'none'
  readonly shape: 'block' | 'round'
  /** What probe A, B, … touches: a pin number as text, `ground`, or words for a place elsewhere. */
  readonly touch: readonly string[]
  /** "Igniter plug, looking into the harness half" */
  readonly label: string
  readonly pins: Readonly<Record<string, FaceWire>>
}

export interface FaceWire {
  /** "BK/RD" */
  readonly code: string
  /** Swatch classes, base first: `wire-bk`. */
  readonly swatches: readonly string[]
  /** "black with red tracer" */
  readonly name: string
}

/** The letters of the probes that touch a place: "A", "AB" or none. */
export const flagsOn = (place: string, touch: readonly string[]) =>
  touch.map((at, i) => (at === place ? letterOf(i) : '')).join('')

export const letterOf = (index: number) => String.fromCharCode('A'.charCodeAt(0) + index)
