import type { Step } from '../../diagnosis/model/walk.ts'
import type { Standing } from '../standing/standing.ts'
import { cannotSeparate } from './cannot-separate.ts'
import { contradiction } from './contradiction.ts'
import { namedVerdict } from './named.ts'
import { outsideThisTree } from './outside.ts'
import type { VerdictView } from './view.ts'

/** The verdict of a job, or nothing while there is still a check to ask for. */
export function presentVerdict(input: Standing): VerdictView | undefined {
  const step: Step = input.walk.step
  switch (step.kind) {
    case 'ask':
      return undefined
    case 'named':
      return namedVerdict(input, step)
    case 'cannotSeparate':
      return cannotSeparate(input, step)
    case 'contradiction':
      return contradiction(input, step)
    case 'outsideThisTree':
      return outsideThisTree(input, step)
  }
}
