import { bodyOf, edge, groundWidth, latchDepth, narrowest } from './connector-face-layout.ts'
import { type FaceOptions, flagsOn } from './connector-face-options.ts'
import { drawCavity, drawGround, drawLatch } from './connector-face-parts.ts'
import { layoutOf, titleOf } from './connector-face-words.ts'
import { short } from './svg.ts'
import { escaped } from './xml.ts'

export type { FaceOptions, FaceWire } from './connector-face-options.ts'

/**
 * Draws the face of a connector, so that one finds the two pins to touch without a book. Our own
 * drawing: a body, numbered cavities with their wire's colours, and a lettered flag on a heavy ring
 * where a probe goes. The wire classes (`wire-bk`) give the fills; everything else is `currentColor`.
 *
 * An SVG element with class `connector-face`, sized by its `viewBox` alone: the page's style sheet
 * gives the width.
 *
 * @throws RangeError where a probe should touch a pin that the face does not have.
 */
export function connectorFace(options: FaceOptions): string {
  for (const pin of options.touch) {
    if (/^\d+$/.test(pin) && !options.rows.flat().includes(Number(pin))) {
      throw new RangeError(`${options.label} has no pin ${pin} to touch`)
    }
  }
  const body = bodyOf(options)
  const ground = flagsOn('ground', options.touch)
  const margin = (side: string) => edge + (options.latch === side ? latchDepth : 0)
  const left = body.halfWidth + margin('left')
  const right = body.halfWidth + margin('right') + (ground ? groundWidth : 0)
  const top = body.halfHeight + margin('top')
  const height = top + body.halfHeight + margin('bottom')
  // A small plug is not blown up to fill the page: it keeps the size of its cavities.
  const spare = Math.max(0, narrowest - left - right) / 2
  const view = [-left - spare, -top, left + right + 2 * spare, height]
  return [
    `<svg class="connector-face" role="img" viewBox="${view.map(short).join(' ')}"`,
    ' fill="none" stroke="currentColor" stroke-width="1.5" text-anchor="middle">',
    `<title>${escaped(titleOf(options))}</title>`,
    `<desc>${escaped(layoutOf(options))}</desc>`,
    drawLatch(options.latch, body),
    body.outline,
    ...body.spots.map((spot) => drawCavity(spot, body.size, options)),
    ground && drawGround(ground, right - groundWidth / 2),
    '</svg>',
  ].join('')
}
