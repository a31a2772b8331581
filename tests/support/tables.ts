import type { Check, Model } from '../../server/diagnosis/model/model.ts'

/**
 * A model from a table of states and tests, as textbooks print them: one fault a state, an outcome for
 * each state and test. A prior under the name `none` is the state without a fault.
 */
export function modelFromTable(
  priors: Readonly<Record<string, number>>,
  tests: Readonly<Record<string, readonly (number | string)[]>>,
  minutes: Readonly<Record<string, number>> = {},
): Model {
  const states = Object.keys(priors)
  return {
    tree: {
      top: 'top',
      gates: new Map([['top', { kind: 'or', inputs: states.filter((s) => s !== 'none') }]]),
    },
    cutSets: states.map((state) => ({
      faults: state === 'none' ? [] : [state],
      parts: state === 'none' ? [] : [state],
      prior: priors[state]!,
    })),
    checks: Object.entries(tests).map(([id, answers]): Check => {
      const outcomes = [...new Set(answers.map(String))].sort()
      return {
        id,
        minutes: minutes[id] ?? 1,
        setups: [],
        outcomes,
        chances: answers.map((answer) => outcomes.map((o) => (o === String(answer) ? 1 : 0))),
      }
    }),
  }
}

/** Evidence that a check came out in exactly this way. */
export function saw(model: Model, id: string, outcome: number | string) {
  const check = model.checks.find((each) => each.id === id)!
  if (!check.outcomes.includes(String(outcome))) throw new RangeError(`${id} has no ${outcome}`)
  return { check: id, likelihoods: check.outcomes.map((o) => (o === String(outcome) ? 1 : 0)) }
}
