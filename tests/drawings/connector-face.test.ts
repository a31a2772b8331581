import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  connectorFace,
  type FaceOptions,
  type FaceWire,
} from '../../server/drawings/connector-face.ts'

const wire = (code: string, name: string): FaceWire => ({
  code,
  name,
  swatches: code.split('/').map((colour) => `wire-${colour.toLowerCase()}`),
})
const plug: FaceOptions = {
  rows: [
    [1, 2, 3, 4],
    [5, 6, null, 8],
  ],
  latch: 'top',
  shape: 'block',
  touch: ['3', '4'],
  label: 'Igniter plug, looking into the harness half',
  pins: { 3: wire('YE', 'yellow'), 4: wire('BK/RD', 'black with red tracer') },
}

const cavities = (svg: string) =>
  [
    ...svg.matchAll(
      /<g class="([^"]+)" data-pin="(\d+)" transform="translate\(([^ ]+) ([^)]+)\)">/g,
    ),
  ].map(([, kind, pin, x, y]) => ({ kind, pin: Number(pin), x: Number(x), y: Number(y) }))
/** The text of each flag, in the order drawn. */
const flags = (svg: string) =>
  [...svg.matchAll(/<g class="flag".*?<text[^>]*>([^<]*)<\/text>/g)].map(([, letters]) => letters)
const part = (svg: string, pin: number) =>
  svg.slice(svg.indexOf(`data-pin="${pin}"`)).split(/<g class="(?:touched )?cavity"/)[0]!

describe('the face of a connector', () => {
  it('says in words what it shows', () => {
    const svg = connectorFace(plug)
    expect(svg).toContain(
      '<title>Igniter plug, looking into the harness half: probe A on pin 3 (yellow), probe B on pin 4 (black with red tracer)</title>',
    )
    expect(svg).toContain('<desc>2 rows of 4; latch at the top.</desc>')
    expect(svg).toMatch(/^<svg [^>]*role="img"/)
  })

  it.each([
    [[[1, 2]], 'block', 'none', '1 row of 2; no latch.'],
    [
      [
        [1, 2],
        [3, 4, 5],
      ],
      'block',
      'left',
      '2 rows of 2 and 3; latch at the left.',
    ],
    [[[1, 2, 3]], 'round', 'right', '1 circle of 3; latch at the right.'],
    [
      [[1, 2, 3], [4]],
      'round',
      'bottom',
      '2 circles of 3 and 1, outermost first; latch at the bottom.',
    ],
  ] as const)('describes %j as a %s with the latch %s', (rows, shape, latch, words) => {
    const svg = connectorFace({ ...plug, rows, shape, latch, touch: ['1'] })
    expect(svg).toContain(`<desc>${words}</desc>`)
    expect(svg.includes('>latch</text>')).toBe(latch !== 'none')
  })

  it('numbers every pin and leaves a place without a pin empty', () => {
    const svg = connectorFace(plug)
    expect(cavities(svg).map(({ pin }) => pin)).toEqual([1, 2, 3, 4, 5, 6, 8])
    for (const { pin } of cavities(svg)) expect(part(svg, pin)).toContain(`>${pin}</text>`)
    expect(svg.match(/class="empty"/g)).toHaveLength(1)
  })

  it('marks the pins to touch, and only those, by a heavy ring and a lettered flag', () => {
    const svg = connectorFace(plug)
    const touched = cavities(svg).filter(({ kind }) => kind === 'touched cavity')
    expect(touched.map(({ pin }) => pin)).toEqual([3, 4])
    expect(svg.match(/class="ring"/g)).toHaveLength(2)
    expect(flags(part(svg, 3))).toEqual(['A'])
    expect(flags(part(svg, 4))).toEqual(['B'])
    expect(flags(svg)).toEqual(['A', 'B'])
    expect(svg).not.toContain('class="ground"')
  })

  it('keeps the letters with the probes, not with the order of the pins', () => {
    const svg = connectorFace({ ...plug, touch: ['4', '3'] })
    expect(flags(part(svg, 3))).toEqual(['B'])
    expect(flags(part(svg, 4))).toEqual(['A'])
  })

  it('draws the wire in its colours, base first', () => {
    const svg = connectorFace(plug)
    expect(part(svg, 4)).toMatch(/class="wire-bk".*class="wire-rd".*>BK\/RD</)
    expect(part(svg, 3)).toMatch(/class="wire-ye"/)
    expect(part(svg, 1)).not.toContain('wire-')
  })

  it('draws ground beside the block, with its flag', () => {
    const svg = connectorFace({ ...plug, touch: ['3', 'ground'] })
    const ground = svg.slice(svg.indexOf('<g class="ground"'))
    expect(flags(ground)).toEqual(['B'])
    const x = Number(/translate\((\S+) /.exec(ground)![1])
    expect(x).toBeGreaterThan(Math.max(...cavities(svg).map((cavity) => cavity.x)) + 26)
    expect(svg).toContain('probe A on pin 3 (yellow), probe B on ground</title>')
  })

  it('names a place elsewhere in words and flags nothing for it', () => {
    const svg = connectorFace({ ...plug, touch: ['the coil tower', '4'] })
    expect(svg).toContain('probe A on the coil tower, probe B on pin 4')
    expect(flags(svg)).toEqual(['B'])
  })

  it('refuses a pin to touch that is not there', () => {
    expect(() => connectorFace({ ...plug, touch: ['3', '7'] })).toThrow(/no pin 7/)
  })

  it('puts the pins of a round connector on a circle, clockwise from the top', () => {
    const pins = cavities(
      connectorFace({ ...plug, shape: 'round', rows: [[1, 2, 3, 4], [5]], touch: ['5'] }),
    )
    const middle = pins.find(({ pin }) => pin === 5)!
    const ring = pins.filter(({ pin }) => pin < 5).sort((a, b) => a.pin - b.pin)
    const radius = middle.y - ring[0]!.y
    const around = ring.map(({ x, y }) => [x - middle.x, y - middle.y].map(Math.round))
    expect(around).toEqual([
      [0, -radius],
      [radius, 0],
      [0, radius],
      [-radius, 0],
    ])
  })

  it('escapes whatever the sheet says', () => {
    const evil = '</title><script>"&\''
    const svg = connectorFace({
      ...plug,
      label: evil,
      touch: ['1', evil],
      pins: { 1: { code: evil, name: evil, swatches: [`x" onload="${evil}`] } },
    })
    expect(svg).not.toContain('<script')
    expect(svg).not.toContain('onload="')
    expect(svg).toContain('&lt;script&gt;&quot;&amp;&#39;')
    expect(unclosed(svg)).toEqual([])
  })
})

describe('every face', () => {
  const faces = fc
    .record({
      lengths: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 3 }),
      latch: fc.constantFrom('top', 'bottom', 'left', 'right', 'none'),
      shape: fc.constantFrom('block', 'round'),
      second: fc.constantFrom('ground', '1', 'the coil tower'),
    })
    .map(({ lengths, latch, shape, second }): FaceOptions => {
      let pin = 0
      const rows = lengths.map((length) => Array.from({ length }, () => ++pin))
      return { ...plug, rows, latch, shape, touch: [String(pin), second] }
    })

  it('is well-formed, without inline style or script, and has no size but its view box', () => {
    fc.assert(
      fc.property(faces, (options) => {
        const svg = connectorFace(options)
        expect(unclosed(svg)).toEqual([])
        expect(svg).not.toMatch(/ style=|<style|<script| on\w+=|NaN|Infinity|undefined/)
        expect(/^<svg ([^>]*)>/.exec(svg)![1]).not.toMatch(/ (width|height)=/)
      }),
    )
  })

  it('keeps cavities and flags apart and inside the view box', () => {
    fc.assert(
      fc.property(faces, (options) => {
        const svg = connectorFace(options)
        const pins = cavities(svg)
        expect(pins).toHaveLength(options.rows.flat().length)
        const [left, top, width, height] = /viewBox="([^"]+)"/.exec(svg)![1]!.split(' ').map(Number)
        const [, size] =
          /data-pin[^>]*><(?:circle r|rect x="-[^"]*" y="-[^"]*" width)="([^"]+)"/.exec(svg)!
        const half = options.shape === 'round' ? Number(size) : Number(size) / 2
        const flag = 25
        for (const [i, a] of pins.entries()) {
          expect(a.x - half).toBeGreaterThan(left!)
          expect(a.x + half).toBeLessThan(left! + width!)
          expect(a.y - half - flag).toBeGreaterThan(top!)
          expect(a.y + half).toBeLessThan(top! + height!)
          for (const b of pins.slice(i + 1)) {
            const beside = Math.abs(a.x - b.x) >= 2 * half + 5
            const above = Math.abs(a.y - b.y) >= 2 * half + flag + 2
            expect(
              beside || above,
              `pins ${a.pin} and ${b.pin} of ${JSON.stringify(options.rows)}`,
            ).toBe(true)
          }
        }
      }),
    )
  })
})

/** Names of elements opened and not closed, or closed and not opened. */
function unclosed(svg: string): string[] {
  const open: string[] = []
  for (const [, closing, name, selfClosing] of svg.matchAll(/<(\/?)([a-z]+)[^<>]*?(\/?)>/g)) {
    if (selfClosing) continue
    if (!closing) open.push(name!)
    else if (open.at(-1) === name) open.pop()
    else return [...open, `/${name}`]
  }
  return open
}
