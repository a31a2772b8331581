import { z } from 'zod'

/** A value with its unit as people write it: `310 Ω`, `7.8 kΩ`, `110 V`. Parsed by `measure/parse`. */
export const QuantityText = z
  .string()
  .trim()
  .min(2)
  .meta({ description: 'A value with its unit: 310 Ω, 7.8 kΩ, 1 MΩ, 110 V.' })
