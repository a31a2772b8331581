import type { CheckCard } from '../../knowledge/case.ts'
import { fades } from '../../knowledge/instantiate/setup-cards.ts'

/** °C of a winding behind the flywheel of an engine that has just died hot. From memory. */
export const runHot = 90

/** Whether it is made on an engine that has been run until it failed hot. */
export const isHot = ({ setups }: CheckCard): boolean => setups.some(fades)
