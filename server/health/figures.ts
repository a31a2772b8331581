import { setImmediate } from 'node:timers/promises'
import type { Steps } from '../diagnosis/testability/steps.ts'
import { type CaseTestability, caseTestability } from '../knowledge/case-testability.ts'
import { allFits, type Fit } from '../knowledge/fits.ts'
import { caseFor } from '../knowledge/instantiate.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'

/** What is known of a case by now. */
export type Standing =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'found'; readonly found: CaseTestability }
  /** Working it out went wrong, which was reported when it happened. */
  | { readonly kind: 'failed' }

interface Task {
  readonly name: string
  readonly steps: Steps<CaseTestability>
}

/** Knowledge never changes while the server runs, so what was found of it once holds. */
const kept = new WeakMap<Knowledge, Map<string, Standing>>()

/**
 * The figures of all cases, worked out one case after another between requests: a step, then whatever
 * came in meanwhile, then the next step. Nothing is done before somebody asks.
 */
export class Figures {
  readonly #known: Map<string, Standing>
  readonly #report: (error: unknown, name: string) => void
  /** What is still to be done, next first. */
  #tasks: readonly Task[]
  #working = false
  #stopped = false

  constructor(knowledge: Knowledge, report: (error: unknown, name: string) => void) {
    this.#known = kept.get(knowledge) ?? new Map()
    kept.set(knowledge, this.#known)
    this.#report = report
    this.#tasks = allFits(knowledge).map((fit) => ({
      name: nameOf(fit),
      steps: stepsOf(knowledge, fit),
    }))
  }

  of(fit: Fit): Standing {
    return this.#known.get(nameOf(fit)) ?? { kind: 'waiting' }
  }

  /** Sees to it that the work is going on, with the case given here first. */
  workOut(first?: Fit): void {
    if (first !== undefined) this.#putFirst(nameOf(first))
    if (this.#working || this.#stopped) return
    this.#working = true
    void this.#work()
  }

  /** No step is taken after this. */
  stop(): void {
    this.#stopped = true
  }

  #putFirst(name: string): void {
    const isFirst = (task: Task) => task.name === name
    this.#tasks = [...this.#tasks.filter(isFirst), ...this.#tasks.filter((task) => !isFirst(task))]
  }

  async #work(): Promise<void> {
    for (let task = await this.#next(); task !== undefined; task = await this.#next()) {
      const standing = this.#step(task)
      if (standing !== null) this.#known.set(task.name, standing)
    }
    this.#working = false
  }

  /** What to go on with, after everybody else has had a turn. */
  async #next(): Promise<Task | undefined> {
    await setImmediate()
    // Another app on the same knowledge may have been faster.
    this.#tasks = this.#tasks.filter(({ name }) => !this.#known.has(name))
    return this.#stopped ? undefined : this.#tasks[0]
  }

  #step({ steps, name }: Task): Standing | null {
    try {
      const { done, value } = steps.next()
      return done ? { kind: 'found', found: value } : null
    } catch (error) {
      // There is no request to answer with it, and the other cases may be sound.
      this.#report(error, name)
      return { kind: 'failed' }
    }
  }
}

/** Drawing a case out is work, too: it waits for the first step. */
function* stepsOf(knowledge: Knowledge, { machine, complaint }: Fit): Steps<CaseTestability> {
  return yield* caseTestability(knowledge, caseFor(knowledge, machine.id, complaint.id))
}

const nameOf = ({ machine, complaint }: Fit): string => `${complaint.id} on ${machine.id}`
