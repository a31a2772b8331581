import type { MeterRange } from '../../../server/measure/doubt/meter.ts'

const range = (top: number, digit: number, percent: number, counts: number): MeterRange => ({
  top,
  digit,
  percent,
  counts,
})

/** Ohm ranges of three classes of meter, invented, with figures typical of each. */
export const meters = {
  hand: [
    range(400, 0.1, 0.8, 4),
    range(4e3, 1, 0.8, 3),
    range(4e4, 10, 0.8, 3),
    range(4e5, 100, 0.8, 3),
    range(4e6, 1e3, 1, 3),
    range(4e7, 1e4, 2, 5),
  ],
  pocket: [
    range(200, 0.1, 1.2, 5),
    range(2e3, 1, 1, 5),
    range(2e4, 10, 1, 5),
    range(2e5, 100, 1.2, 5),
    range(2e6, 1e3, 1.5, 5),
  ],
  shop: [
    range(60, 0.01, 0.5, 5),
    range(600, 0.1, 0.3, 2),
    range(6e3, 1, 0.3, 2),
    range(6e4, 10, 0.3, 2),
    range(6e5, 100, 0.4, 2),
    range(6e6, 1e3, 0.8, 3),
    range(6e7, 1e4, 1.5, 5),
  ],
} satisfies Record<string, readonly MeterRange[]>

/** DC volts of the hand meter, behind a peak-hold adaptor. */
export const handVolts = [
  range(4, 0.001, 0.6, 3),
  range(40, 0.01, 0.6, 3),
  range(400, 0.1, 0.6, 3),
  range(1000, 1, 0.8, 3),
]

/** A workshop, known well enough. */
export const workshop = { celsius: 20, halfWidth: 2 }
