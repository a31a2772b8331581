import { entry } from '../../../diagnosis/model/named.ts'
import { sentencesIn } from '../../instantiate/words.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { CheckKind } from '../../schema/index.ts'
import type { Report } from '../report.ts'

/** A sentence longer than this is lost before its end when somebody hears it. */
const mostWords = 22

/** It ends the sentence "See that it cannot move off: ". */
const mostWordsHeld = 16

/** Who reads a meter at more places than this loses count on the phone. */
const mostPlaces = 3

/**
 * A check for an owner is one that somebody can make alone, out there, from what is said to them; and whatever is said
 * by phone is followed by ear.
 */
export function ownerRule(knowledge: Knowledge, report: Report): void {
  for (const [, check] of knowledge.checkKinds) {
    if (typeof check.owner === 'string' && check.owner !== 'yes') continue
    for (const why of whyNot(check, knowledge)) report.add(check, ['owner'], why)
    tooLong(check, ['phone'], check.phone, report)
    check.answers?.forEach(({ mend }, a) => {
      if (mend) tooLong(check, ['answers', a, 'mend'], mend.phone ?? mend.do, report)
    })
  }
  for (const [, machine] of knowledge.machines) {
    tooLong(machine, ['held'], machine.held ?? '', report, mostWordsHeld)
  }
  for (const [, part] of knowledge.partKinds) {
    part.modes.forEach(({ mend }, m) => {
      if (mend) tooLong(part, ['modes', m, 'mend', 'phone'], mend.phone, report)
    })
  }
}

function tooLong(
  entry: object,
  at: readonly PropertyKey[],
  text: string,
  report: Report,
  most = mostWords,
): void {
  for (const sentence of sentencesIn(text)) {
    if (sentence.split(/\s+/).length <= most) continue
    const says = `"${sentence}" is too long to follow by ear: cut it into sentences of at most ${most} words`
    report.add(entry, at, says)
  }
}

function whyNot(check: CheckKind, { owner, setups }: Knowledge): string[] {
  const needs = (check.setups ?? []).map((id) => entry(setups.setups, id))
  const given = new Set(Object.values(owner.kit).flatMap(({ gives = [] }) => gives))
  const missing = [check.tools, ...needs.map(({ tools = [] }) => tools)]
    .flat()
    .filter((tool) => !given.has(tool))
  return [
    !check.where.includes('trailside') && 'it is only made at the bench',
    missing.length > 0 && `nothing in the kit of owner.yaml gives ${missing.join(', ')}`,
    (check.places ?? 1) > mostPlaces && `it is read at ${check.places} places`,
    check.engine === 'running' &&
      needs.some(({ stopOff }) => stopOff) &&
      'it runs an engine that its switch does not stop',
    /workshop|technician/i.test(check.phone) && 'its words for the phone send the owner away',
  ].flatMap((why) => (why === false ? [] : `no owner can make it, since ${why}: say why not`))
}
