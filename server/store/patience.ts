import { setTimeout as after } from 'node:timers/promises'
import { recognised } from './recognise.ts'
import { StoreTrouble } from './trouble.ts'

/** How long another program may hold the file before that is said, and how often to look, in ms. */
const patience = 2000
const pause = 20

/**
 * Tries again while another program holds the file; everything else goes on between the attempts.
 * @throws StoreTrouble for whatever a person can mend.
 */
export async function patiently<T>(attempt: () => Promise<T>): Promise<T> {
  const latest = performance.now() + patience
  for (;;) {
    try {
      return await attempt()
    } catch (problem) {
      const trouble = recognised(problem)
      if (!isInUse(trouble) || performance.now() > latest) throw trouble
    }
    await after(pause)
  }
}

const isInUse = (problem: unknown) => problem instanceof StoreTrouble && problem.kind === 'in use'
