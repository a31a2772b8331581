import { type FaceOptions, letterOf } from './connector-face-options.ts'

export function titleOf({ label, touch, pins }: FaceOptions): string {
  const probes = touch.map((at, i) => {
    const place = /^\d+$/.test(at) ? `pin ${at}` : at
    return `probe ${letterOf(i)} on ${place}${pins[at] ? ` (${pins[at].name})` : ''}`
  })
  return [label, probes.join(', ')].filter(Boolean).join(': ')
}

export function layoutOf({ rows, shape, latch }: FaceOptions): string {
  const lengths = rows.map((row) => row.length)
  const [first] = lengths
  const alike = lengths.every((length) => length === first)
  const pins = alike ? `${first}` : lengths.join(' and ')
  const lines = shape === 'round' ? ['circle', 'circles'] : ['row', 'rows']
  const layout =
    lengths.length === 1
      ? `1 ${lines[0]} of ${pins}`
      : `${lengths.length} ${lines[1]} of ${pins}${shape === 'round' ? ', outermost first' : ''}`
  return `${layout}; ${latch === 'none' ? 'no latch' : `latch at the ${latch}`}.`
}
