import type { Step } from '../diagnosis/walk-types.ts'
import type { VerdictView } from './page-verdict.ts'
import type { JobInput } from './present-job.ts'
import { readSentence } from './verdict-evidence.ts'
import { couldStillBe } from './verdict-named.ts'

type Contradiction = Extract<Step, { kind: 'contradiction' }>

/** "The readings do not fit any single explanation: repeat … first." */
export function contradiction(input: JobInput, { repeat }: Contradiction): VerdictView {
  const title = (check: string) => `“${input.kase.checks.get(check)!.title}”`
  const [first] = repeat
  return {
    kind: 'contradiction',
    stamp: 'the readings disagree',
    says: `The readings do not fit any single explanation${first ? `: repeat ${title(first.check)} first` : ''}.`,
    evidence: repeat
      .map(({ check }) => `${readSentence(input, check)} That does not fit the rest.`)
      .slice(0, 3),
    cautions: [],
    next: repeat.slice(0, 3).map(({ check }) => ({
      says: `Repeat ${title(check)}; if it comes out as before, let it stand.`,
      way: {
        href: `/jobs/${input.job.id}?correct=${encodeURIComponent(check)}`,
        text: 'Repeat it',
      },
    })),
    couldBe: couldStillBe(input, []),
  }
}
