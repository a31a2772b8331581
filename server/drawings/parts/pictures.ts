import { escaped } from '../xml.ts'
import { feedingPictures } from './feeding.ts'
import { magnetoPictures } from './magneto.ts'
import { sparkPictures } from './spark.ts'
import { stoppingPictures } from './stopping.ts'
import type { Picture } from './strokes.ts'

const pictures = {
  ...magnetoPictures,
  ...sparkPictures,
  ...stoppingPictures,
  ...feedingPictures,
} satisfies Readonly<Record<string, Picture>>

export type PartPicture = keyof typeof pictures
export const partPictures = Object.keys(pictures) as readonly PartPicture[]

/**
 * A line drawing of a kind of part as an SVG, in the colour of the text around it: bold outlines, thin details,
 * a tint for what is solid. It shows the kind, and no one maker's part.
 */
export function partPicture(name: PartPicture): string {
  const { title, strokes } = pictures[name]
  return [
    '<svg class="part-picture" viewBox="0 0 120 90" role="img" stroke="currentColor" stroke-linecap="round" stroke-linejoin="round">',
    `<title>${escaped(title)}</title>`,
    ...strokes,
    '</svg>',
  ].join('')
}
