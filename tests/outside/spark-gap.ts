/**
 * kV that break down air between flat or large round electrodes `mm` apart: 24.22·δ·d + 6.08·√(δ·d), d in cm. From
 * memory; within 3 % of the published table of large spheres. δ is the density of the air, 1 at 20 °C and 101.3 kPa.
 */
export function betweenRounds(mm: number, density = 1): number {
  const d = (density * mm) / 10
  return 24.22 * d + 6.08 * Math.sqrt(d)
}

/**
 * kV that break down air between points `mm` apart, as those of a tester: least and most. A crude rule of 1 kV a mm
 * is published; from 1.24 at 5 mm down is from memory, of a table of needles.
 */
export const betweenPoints = (mm: number): readonly [least: number, most: number] => [mm, 1.24 * mm]
