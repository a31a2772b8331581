import { describe, expect, it } from 'vitest'
import { shippedCases } from '../support/knowledge.ts'
import { typicalWalk } from '../support/oracles/typical-walk.ts'

const cases = shippedCases()

describe('every fault of the shipped trees', () => {
  it('is tried on five complaints and machines', () => {
    expect(cases.length).toBeGreaterThanOrEqual(5)
  })

  it.each(cases.map((kase) => [`${kase.complaint.id} on ${kase.machine.id}`, kase] as const))(
    'ends with its part named or in a stated group: %s',
    (name, kase) => {
      const tally = { named: 0, grouped: 0, minutes: 0 }
      const lost: string[] = []
      const groups: string[] = []
      const { model } = kase
      const single = model.cutSets.flatMap((cutSet, c) => (cutSet.faults.length === 1 ? [c] : []))
      const alone = single.length > 0 ? single : model.cutSets.map((_, c) => c)
      expect(alone.length).toBeGreaterThan(3)
      for (const c of alone) {
        const { parts, faults } = model.cutSets[c]!
        if (parts.length === 0) continue
        const { end, minutes, evidence } = typicalWalk(model, c, new Set())
        tally.minutes += minutes
        if (end.kind === 'named' && end.parts.join() === parts.join()) tally.named += 1
        else if (
          end.kind === 'cannotSeparate' &&
          parts.every((part) => end.group.some((suspect) => suspect.part === part))
        ) {
          tally.grouped += 1
          const group = end.group.map((s) => `${s.part} ${Math.round(s.probability * 100)} %`)
          groups.push(`${faults.join(' + ')}: ${group.join(', ')}`)
        } else {
          const read = evidence.map(({ check, outcomes }) => {
            const { outcomes: words } = model.checks.find(({ id }) => id === check)!
            return `${check}=${words[outcomes.indexOf(1)]}`
          })
          lost.push(`${faults.join(' + ')} → ${JSON.stringify(end)} after ${read.join(', ')}`)
        }
      }
      const each = (tally.minutes / (tally.named + tally.grouped + lost.length)).toFixed(1)
      console.log(
        `${name}: ${tally.named} faults named, ${tally.grouped} in a stated group, ${lost.length} lost; ` +
          `${each} min each${groups.length > 0 ? `\n  ${groups.join('\n  ')}` : ''}`,
      )
      expect(lost).toEqual([])
      expect(tally.named).toBeGreaterThan(tally.grouped)
    },
  )
})
