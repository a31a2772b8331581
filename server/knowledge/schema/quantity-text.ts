import { z } from 'zod'

/**
 * A value with its unit as people write it: `310 Ω`, `7.8 kΩ`, `110 V`. Parsed by `measure/parse`. A number
 * alone comes through as its digits: the lint knows which unit it lacks, and a schema does not.
 */
export const QuantityText = z.preprocess(
  (value) => (typeof value === 'number' ? String(value) : value),
  z
    .string()
    .trim()
    .min(1, 'write a value with its unit, like 310 Ω or 7.8 kΩ')
    .meta({ description: 'A value with its unit: 310 Ω, 7.8 kΩ, 1 MΩ, 110 V.' }),
)
