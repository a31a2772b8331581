import type { Knowledge } from '../knowledge.ts'

/** So many steps of a check come before it turns the engine: what they wait for began earlier, and may be over. */
const beforeItTurns = 2

/** The steps of a check that come before it turns the engine: all where it does not. */
export function stepsBeforeItTurns(engine: string, steps: readonly string[]): readonly string[] {
  return engine === 'stopped' ? steps : steps.slice(0, beforeItTurns)
}

/** Minutes that a check waits once its own steps have turned the engine: they wait side by side. */
export function waitAfterTurning(
  knowledge: Pick<Knowledge, 'cautions'>,
  engine: string,
  steps: readonly string[],
): number {
  return longestWait(knowledge, steps.slice(stepsBeforeItTurns(engine, steps).length))
}

/** The longest wait that one of these texts asks for, in minutes after the engine last turned, as the cautions have it. */
export function longestWait(
  { cautions }: Pick<Knowledge, 'cautions'>,
  texts: readonly string[],
): number {
  const waits = Object.values(cautions.cautions).flatMap((caution) => caution.waits ?? [])
  const said = texts.join('\n').toLowerCase()
  const asked = waits.filter(({ words }) => said.includes(words.toLowerCase()))
  return Math.max(0, ...asked.map(({ minutes }) => minutes))
}
