/** A passive peak-hold adaptor. Silicon, 1 µF, and 1 MΩ beside a meter of 10 MΩ: from memory. */
export const adaptor = { farad: 1e-6, load: 1 / (1e-6 + 1e-7), drop: 0.55 }

/** Pulses that an adaptor is fed with: half sines `width` s long, one every `period` s. */
export interface Pulses {
  readonly period: number
  readonly width: number
}

/**
 * V that the meter behind the adaptor shows for a source of `peak` V and `ohms` Ω. The mean current into the
 * capacitor, (peak·sin θ − V − drop)/ohms over the part of the half sine that drives it, is what the load
 * takes out, V/load; solved for V by halving.
 */
export function shownBehindAdaptor(peak: number, ohms: number, { period, width }: Pulses): number {
  let low = 0
  let high = Math.max(0, peak - adaptor.drop)
  for (let i = 0; i < 50; i += 1) {
    const volts = (low + high) / 2
    const spent = (volts * period) / adaptor.load
    if (charge(peak, volts + adaptor.drop, Math.max(ohms, 0.1), width) > spent) low = volts
    else high = volts
  }
  // From pulse to pulse the capacitor runs down; the meter shows its mean.
  return low * (1 - period / (2 * adaptor.farad * adaptor.load))
}

/** Coulombs that one half sine drives into a capacitor that stands at `held` V. */
function charge(peak: number, held: number, ohms: number, width: number): number {
  if (peak <= held) return 0
  const from = Math.asin(held / peak)
  return ((width / Math.PI) * (2 * peak * Math.cos(from) - held * (Math.PI - 2 * from))) / ohms
}

/** Twelve poles give six whole waves a turn. Common practice. */
export const waves = (rpm: number): Pulses => ({ period: 10 / rpm, width: 5 / rpm })
/** One lug a turn passes a pickup within some degrees. From memory. */
export const lug = (rpm: number): Pulses => ({ period: 60 / rpm, width: 1 / rpm })
