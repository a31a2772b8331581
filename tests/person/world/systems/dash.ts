import { partsIn } from '../../../../server/practice/world/sheet.ts'
import type { Now } from '../now.ts'
import { has } from '../site.ts'
import { lights } from './lights.ts'

/** Ω on the way that leave a test lamp of 21 W, or a dash, too little to wake. From memory. */
const tooMuch = 6

/** Least V AC of the lamps that wake an hour meter. From memory. */
const wakes = 6

/** Whether enough arrives at the plug of the dash, against its own ground or against bare metal. */
export function feedsDash(now: Now, toMetal: boolean): boolean {
  const { machine } = now.site.world
  const roles = ['dash-fuse', 'dash-wires', ...(toMetal ? [] : ['dash-ground'])]
  const onTheWay = roles.flatMap((role) => partsIn(machine, role))
  const ohms = onTheWay.reduce((sum, { id }) => sum + (now.effect(id).series ?? 0), 0)
  if (!(ohms < tooMuch)) return false
  return has(now.site, 'dash-fuse') || lights(now, 2500, false).atRegulatorToMetal > wakes
}

/** Whether it shows anything. */
export function dashWakes(now: Now): boolean {
  const { machine, circuit } = now.site.world
  const [dash] = partsIn(machine, 'dash').map(({ id }) => id)
  const plugs = partsIn(machine, 'dash-ground').flatMap(({ id }) => circuit.grounds[id] ?? [])
  const isJoined = plugs.every(([plug]) => !now.site.standing.apart.has(plug))
  return isJoined && !now.has(dash!, 'dead', 'wet') && feedsDash(now, false)
}
