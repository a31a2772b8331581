/** An ignition coil whose primary current is cut off: by points, or by the transistor of a module. */
export interface InductionCoil {
  /** Of the primary, H and Ω. */
  readonly henry: number
  readonly ohms: number
  /** Turns of the secondary for each turn of the primary. */
  readonly turns: number
  /** F across the secondary: its own, the lead's and the plug's. */
  readonly secondaryFarad: number
}

/** What stands across the two windings once the current is cut off. */
export interface Across {
  /** F across the points or the transistor: the condenser. */
  readonly farad: number
  /** Ω across it, of a condenser that leaks. */
  readonly leak?: number
  /** Ω across the secondary: a fouled plug, a damp lead. */
  readonly shunt?: number
}

/**
 * V peak of a secondary with nothing but a shunt on it when `amps` are cut off: a parallel circuit that begins
 * with all its energy in L, I·√(L/C)·turns·e^(−ζ·acos ζ/√(1 − ζ²)), with C = condenser + turns²·secondary. Both
 * windings are taken as wholly coupled, so that a real coil, whose leakage rings, gives up to a tenth more.
 */
export function secondaryPeak(
  { henry, ohms, turns, secondaryFarad }: InductionCoil,
  amps: number,
  { farad, leak = Infinity, shunt = Infinity }: Across,
): number {
  const whole = farad + turns ** 2 * secondaryFarad
  const impedance = Math.sqrt(henry / whole)
  const damping = ohms / impedance / 2 + impedance / leak / 2 + (impedance * turns ** 2) / shunt / 2
  return amps * impedance * turns * leftAtPeak(damping)
}

/** Share of I·√(L/C) that the first peak of such a circuit reaches, by its damping ratio; e⁻¹ at 1. */
function leftAtPeak(damping: number): number {
  if (Math.abs(damping - 1) < 1e-6) return Math.exp(-1)
  return damping < 1
    ? Math.exp((-damping * Math.acos(damping)) / Math.sqrt(1 - damping ** 2))
    : Math.exp((-damping * Math.acosh(damping)) / Math.sqrt(damping ** 2 - 1))
}

/**
 * Points that open with no condenser draw an arc of some 15 V, which burns until this many A are left: only those
 * are cut off. From memory, as of tungsten in air.
 */
export const arc = { volts: 15, amps: 0.5 }

/** A that points cut off, with a condenser across them or with one that is open. */
export const cutOff = (amps: number, hasCondenser: boolean): number =>
  hasCondenser ? amps : Math.min(amps, arc.amps)

/**
 * A in a primary that is closed on itself, `seconds` after its EMF, `peak` V at `hz`, has begun to rise from nothing:
 * E/Z·(sin(ωt − φ) + sin φ·e^(−tR/L)). EMF and frequency are both in proportion to speed, so that it grows with
 * the speed while ωL is less than R, and no more above that.
 */
export function shortedPrimary(
  { henry, ohms }: Pick<InductionCoil, 'henry' | 'ohms'>,
  { peak, hz }: { readonly peak: number; readonly hz: number },
  seconds: number,
): number {
  const omega = 2 * Math.PI * hz
  const phase = Math.atan2(omega * henry, ohms)
  const settling = Math.sin(phase) * Math.exp((-seconds * ohms) / henry)
  return (peak / Math.hypot(ohms, omega * henry)) * (Math.sin(omega * seconds - phase) + settling)
}

/** A in a primary that a battery has fed through closed points for so many seconds: V/R·(1 − e^(−tR/L)). */
export function fedPrimary(
  { henry, ohms }: Pick<InductionCoil, 'henry' | 'ohms'>,
  volts: number,
  seconds: number,
): number {
  return (volts / ohms) * (1 - Math.exp((-seconds * ohms) / henry))
}
