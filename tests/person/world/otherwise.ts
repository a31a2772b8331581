import { nowAt } from './now.ts'
import { has, type Site } from './site.ts'
import { firing, idle, jumps, ropeSpeed } from './systems/engine.ts'
import { fuel } from './systems/fuel.ts'
import { ignition } from './systems/ignition.ts'
import { starting } from './systems/starting.ts'
import { outputsOf } from './world.ts'

/**
 * Whether the machine does what its owner says that it still does, cold and left in peace: "it starts and idles",
 * "the engine runs well, but", "I hear the pump hum and there is a spark". A fault that stops it altogether would have
 * brought another complaint.
 */
export function runsOtherwise(site: Site): boolean {
  const now = nowAt({ ...site, doing: { certain: false } })
  const outputs = outputsOf(site.world)
  const fires = firing(now, idle).length
  switch (site.world.complaint) {
    case 'no-spark':
      return !has(site, 'starter') || starting(now).rpm > 120
    case 'does-not-turn':
      return true
    case 'no-pump-prime':
      return true
    case 'spark-no-start':
      return outputs.some((output) => {
        const { spark } = ignition(now, ropeSpeed(site)).outputs.get(output)!
        return spark >= jumps.plug.blue
      })
    case 'no-injection-pulse': {
      const rpm = ropeSpeed(site)
      const sparks = [...ignition(now, rpm).outputs.values()].map(({ spark }) => spark)
      return fuel(now, rpm).pump === 'hums' && Math.max(...sparks) >= jumps.plug.blue
    }
    case 'one-cylinder-dead':
    case 'hard-start-cold':
      return fires > 0
    default:
      return fires === outputs.length
  }
}
