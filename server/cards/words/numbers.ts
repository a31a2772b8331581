import type { Stage } from '../../diagnosis/outline/outline.ts'

/** What the places of a card are called. */
export interface Numbers {
  /** Steps in the order in which they are met, "1", "2"; endings "A", "B", ... "Z", "AA". */
  readonly placeOf: (stage: Stage) => string
  /** By check: the first step that makes it; of those that only make sure, numbers after the last step. */
  readonly checks: ReadonlyMap<string, string>
}

export function numbersOf(first: Stage): Numbers {
  const places = new Map<Stage, string>()
  const checks = new Map<string, string>()
  const makeSure: string[] = []
  let steps = 0
  let endings = 0
  const visit = (stage: Stage): void => {
    if (stage.kind === 'ending') {
      places.set(stage, lettered(endings++))
      makeSure.push(...stage.sure.map(({ check }) => check))
      return
    }
    const number = String(++steps)
    places.set(stage, number)
    if (!checks.has(stage.check)) checks.set(stage.check, number)
    for (const { next } of stage.answers) visit(next)
  }
  visit(first)
  for (const check of makeSure) if (!checks.has(check)) checks.set(check, String(++steps))
  return { placeOf: (stage) => places.get(stage) ?? '', checks }
}

/** 0 is A, 25 is Z, 26 is AA. */
export function lettered(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26))
  return index < 26 ? letter : lettered(Math.floor(index / 26) - 1) + letter
}
