import type { Problem } from './knowledge.ts'

/** The knowledge has mistakes; the message lists them, one a line, as `file:line: sentence`. */
export class KnowledgeProblems extends Error {
  readonly problems: readonly Problem[]

  constructor(problems: readonly Problem[]) {
    super(problems.map((each) => `${each.file}:${each.line}: ${each.says}`).join('\n'))
    this.name = 'KnowledgeProblems'
    this.problems = problems
  }
}
