import { setImmediate } from 'node:timers/promises'
import { allFits } from '../fits.ts'
import { caseFor } from '../instantiate.ts'
import type { Knowledge } from '../knowledge.ts'

/**
 * Draws out every case before somebody asks for it, one a turn of the loop: whoever does ask meanwhile
 * waits for one at most.
 *
 * @param ended asked before each; none is drawn after it said yes
 */
export async function drawAhead(knowledge: Knowledge, ended: () => boolean): Promise<void> {
  for (const { machine, complaint } of allFits(knowledge)) {
    await setImmediate()
    if (ended()) return
    caseFor(knowledge, machine.id, complaint.id)
  }
}
