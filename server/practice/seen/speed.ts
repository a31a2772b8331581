import { type Random, spread } from '../world/chance.ts'
import { type Pull, pulls } from './making.ts'

/** One pull of this kind, rpm: nobody pulls twice alike. From memory. */
export const speedOf = (pull: Pull, random: Random): number => spread(random, pulls[pull], 0.06)
