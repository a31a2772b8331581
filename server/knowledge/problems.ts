import type { Problem } from './knowledge.ts'

/** The knowledge has mistakes; the message lists them, one a line, as `file:line: sentence`. */
export class KnowledgeProblems extends Error {
  readonly problems: readonly Problem[]

  constructor(problems: readonly Problem[]) {
    super(problems.map(problemLine).join('\n'))
    this.name = 'KnowledgeProblems'
    this.problems = problems
  }
}

/** `machines/pedlar-1c.yaml:166: resistance is given in Ω: write 210 Ω` */
export const problemLine = ({ file, line, says }: Problem): string => `${file}:${line}: ${says}`
