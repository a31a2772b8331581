import { describe, expect, it } from 'vitest'
import { type DrawnBranch, treeDrawing } from '../../server/drawings/tree-drawing.ts'

const leaf = (says: string, changes: Partial<DrawnBranch> = {}): DrawnBranch => ({
  says,
  probability: 0.1,
  percent: '10 %',
  cleared: false,
  asked: false,
  below: [],
  folded: 0,
  ...changes,
})

const tree = leaf('No spark at any plug', {
  gate: 1,
  probability: 1,
  percent: '>99 %',
  below: [
    leaf('The stop circuit holds the ignition off', {
      gate: 1,
      cleared: true,
      note: 'cleared: stop wire read OL (reading 1)',
      folded: 4,
    }),
    leaf('Every output is dead', {
      gate: 'all',
      below: [leaf('Left output', { probability: 0.9 }), leaf('Right <output>', { asked: true })],
    }),
    leaf('Two of three legs', { gate: 2, below: [leaf('Leg A & leg B')] }),
  ],
})

describe('the drawing of a fault tree', () => {
  const svg = treeDrawing(tree, 'Fault tree: no spark')

  it('writes gates by their function: any, all, at least so many', () => {
    expect(
      svg.match(/class="function"[^>]*>([^<]+)</g)?.map((m) => m.split('>')[1]!.slice(0, -1)),
    ).toEqual(['≥1', '≥1', '&amp;', '≥2'])
  })

  it('draws a probable branch heavier than an improbable one, and cuts a cleared one through', () => {
    const heavy = [...svg.matchAll(/class="pipe" fill="none" stroke-width="([\d.]+)"/g)].map((m) =>
      Number(m[1]),
    )
    expect(Math.max(...heavy)).toBeCloseTo(1 + 5 * 0.9, 1)
    expect(Math.min(...heavy)).toBeCloseTo(1 + 5 * 0.1, 1)
    expect(svg.match(/class="cut"/g)).toHaveLength(1)
    expect(svg).toMatch(/class="note"[^>]*>cleared: stop wire read OL/)
  })

  it('counts what is folded away and marks where the next check decides', () => {
    expect(svg).toContain('4 faults folded')
    expect(svg.match(/class="asked"/g)).toHaveLength(1)
  })

  it('escapes what people wrote', () => {
    expect(svg).toContain('Right &lt;output&gt;')
    expect(svg).toContain('Leg A &amp; leg B')
  })

  it('keeps every word inside the picture, also of sixty faults ten levels deep', () => {
    const deep = (level: number): DrawnBranch =>
      leaf('A branch whose name is rather long for a small telephone', {
        gate: 1,
        below: level === 0 ? Array.from({ length: 50 }, () => leaf('A fault')) : [deep(level - 1)],
      })
    const picture = treeDrawing(deep(9), 'deep')
    const [, width, height] = /viewBox="0 0 (\d+) (\d+)"/.exec(picture)!.map(Number)
    const spans = [...picture.matchAll(/<tspan class="name" x="([\d.]+)" y="([\d.]+)">([^<]*)</g)]
    expect(spans.length).toBeGreaterThan(60)
    for (const [, x, y, text] of spans) {
      expect(Number(x) + text!.length * 6.9).toBeLessThanOrEqual(width!)
      expect(Number(y)).toBeLessThan(height!)
    }
  })
})
