/** A joined pair of pins, or a cap on its lead, Ω. Common practice: a few mΩ. */
export const joint = 0.005
