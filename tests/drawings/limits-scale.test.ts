import { describe, expect, it } from 'vitest'
import { type LimitsScale, limitsScale } from '../../server/drawings/limits-scale.ts'

const scale: LimitsScale = {
  id: 'reading-3',
  title: 'Resistance on a scale with its limits',
  says: 'Limits: 100 Ω to 200 Ω. As read: 123 Ω.',
  limits: { low: 100, high: 200, label: 'limits 100 Ω to 200 Ω' },
  read: { at: 123, label: 'as read 123 Ω' },
  corrected: { at: 150, halfWidth: 10, label: '150 Ω ± 10 Ω at 20 °C' },
}

/** Where things stand along the line, in per cent. */
function places(of: LimitsScale) {
  const svg = limitsScale(of)
  const number = (pattern: RegExp) => [...svg.matchAll(pattern)].map((match) => Number(match[1]))
  const [band] = [...svg.matchAll(/class="within" x="([\d.]+)%" y="\d+" width="([\d.]+)%"/g)]
  return {
    band: { from: Number(band![1]), to: Number(band![1]) + Number(band![2]) },
    posts: number(/class="post" x1="([\d.]+)%"/g),
    read: number(/<svg x="([\d.]+)%" y="28"/g)[0],
    corrected: number(/<svg x="([\d.]+)%" y="76"/g)[0],
    doubt: number(/class="doubt-end" x1="([\d.]+)%"/g),
  }
}

describe('the scale of limits, reading and corrected reading', () => {
  it('places everything along one straight line', () => {
    const { band, posts, read, corrected, doubt } = places(scale)
    const at = (value: number) => band.from + ((value - 100) / 100) * (band.to - band.from)
    expect(band.to - band.from).toBeGreaterThan(20)
    expect(posts[0]).toBeCloseTo(band.from, 1)
    expect(posts[1]).toBeCloseTo(band.to, 1)
    expect(read).toBeCloseTo(at(123), 1)
    expect(corrected).toBeCloseTo(at(150), 1)
    expect(doubt[0]).toBeCloseTo(at(140), 1)
    expect(doubt[1]).toBeCloseTo(at(160), 1)
  })

  it('has the limits inside, with room on both sides', () => {
    const { band } = places(scale)
    expect(band.from).toBeGreaterThan(10)
    expect(band.to).toBeLessThan(90)
  })

  it('turns logarithmic where the reading is far off, so that the band stays wide enough to see', () => {
    const far = { ...scale, read: { at: 1e5, label: 'as read 100 kΩ' } }
    const { band, read } = places({ ...far, corrected: undefined } as unknown as LimitsScale)
    expect(band.to - band.from).toBeGreaterThan(4)
    expect(read).toBeGreaterThan(90)
    // On a straight line the band would be a thousandth of it.
    const log = (value: number) => Math.log10(value)
    const perDecade = (band.to - band.from) / (log(200) - log(100))
    expect(read).toBeCloseTo(band.to + perDecade * (log(1e5) - log(200)), 0)
  })

  it('shows OL as an arrow at the right end', () => {
    const over: LimitsScale = { ...scale, read: { at: 'OL', label: 'as read OL' } }
    expect(places(over).read).toBe(100)
    expect(limitsScale(over)).toContain('class="read-mark" d="M-16-7L-2 0-16 7z"')
    expect(limitsScale(scale)).not.toContain('M-16-7')
  })

  it.each([
    ['only a low limit', 110, undefined],
    ['only a high limit', undefined, 0.3],
  ])('reaches to the end of the line with %s', (_, low, high) => {
    const value = (low ?? high)!
    const limits = { ...(low && { low }), ...(high && { high }) }
    const { band, posts } = places({
      ...scale,
      limits: { ...limits, label: 'limits' },
      read: { at: value * 1.1, label: 'read' },
      corrected: { at: value, halfWidth: value / 10, label: 'corrected' },
    })
    expect(posts).toHaveLength(1)
    if (low === undefined) {
      expect(band.from).toBe(0)
      expect(posts[0]).toBeCloseTo(band.to, 1)
    } else {
      expect(band.to).toBe(100)
      expect(posts[0]).toBeCloseTo(band.from, 1)
    }
    expect(band.to - band.from).toBeGreaterThan(25)
  })

  it('keeps a bar that reaches below nothing on the line', () => {
    const { doubt } = places({
      ...scale,
      limits: { low: 0.2, high: 0.3, label: 'limits' },
      read: { at: 0.5, label: 'read' },
      corrected: { at: 0.2, halfWidth: 0.5, label: 'corrected' },
    })
    expect(Math.min(...doubt)).toBeGreaterThanOrEqual(0)
    expect(Math.max(...doubt)).toBeLessThanOrEqual(100)
  })

  it('says the same in words, and what people typed is text', () => {
    const svg = limitsScale({ ...scale, says: 'a < b & c' })
    expect(svg).toContain(
      '<title id="reading-3-title">Resistance on a scale with its limits</title>',
    )
    expect(svg).toContain('<desc id="reading-3-says">a &lt; b &amp; c</desc>')
    expect(svg).toContain('aria-labelledby="reading-3-title"')
    expect(svg).toContain('aria-describedby="reading-3-says"')
    expect(svg).not.toMatch(/style=|<style|<script/)
  })

  it('has its labels inside the line on the narrowest screen', () => {
    const left = limitsScale({
      ...scale,
      read: { at: 40, label: 'as read 40 Ω, a long way to the left' },
    })
    expect(left).toContain('<text class="read-label" x="0%" y="14" text-anchor="start">')
    const right = limitsScale({
      ...scale,
      read: { at: 260, label: 'as read 260 Ω, a long way right' },
    })
    expect(right).toContain('<text class="read-label" x="100%" y="14" text-anchor="end">')
  })
})
