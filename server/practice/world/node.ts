/** A pin of a connector. */
export type Pin = readonly [plug: string, pin: number]

/** The half of a connector that faces the harness, and the other one. */
export type Half = 'harness' | 'own'

export const node = ([plug, pin]: Pin, half: Half): string => `${plug} ${pin} ${half}`
export const ground = 'ground'

export const tower = (output: string) => `tower ${output}`
export const leadIn = (output: string) => `lead in ${output}`
export const leadOut = (output: string) => `lead out ${output}`
export const capIn = (output: string) => `cap in ${output}`
export const capOut = (output: string) => `cap out ${output}`
