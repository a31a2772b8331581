import { longestSide, mostPoints } from '../../photos/clean.ts'
import type { NoPicture } from '../../photos/picture.ts'
import { counted } from '../words/sentences.ts'
import { mostBytes } from './upload.ts'

/** More than anybody looks through; the file that all is kept in grows with each. */
export const mostPhotos = 24

const megabytes = mostBytes / 2 ** 20
const points = `${mostPoints / 1e6} million points`

export const hint = `JPEG, PNG or WebP, at most ${megabytes} MB. Where and when it was taken is left out of it.`

/** What to do about each thing that keeps a file from being taken. */
export const problems: Readonly<Record<NoPicture, string>> = {
  empty: 'That file is empty. Choose the picture once more.',
  'of no kind': 'That is no JPEG, PNG or WebP picture. Save it as one of these, and send that.',
  'cut short': 'The picture ends in the middle. Send it once more.',
  damaged: 'The picture is damaged and cannot be shown. Take it once more.',
  moving: 'Moving pictures are not taken. Choose a still one.',
  'too many points': `The picture has more than ${points}, or a side of more than ${longestSide.toLocaleString('en-GB')}. Save it smaller, and send that.`,
}

export const nothingChosen = 'Choose a picture first.'
export const tooLarge = `The file is larger than ${megabytes} MB. Save the picture smaller, and send that.`
export const notWhole = 'The picture did not arrive whole. Send it once more.'
export const noSuchSubject = 'Choose one of the checks of this job, or the machine.'
export const tooMany = `A job holds ${counted(mostPhotos, 'photo')} at most. Delete one first.`
export const noneToDelete = 'Press Delete below the photo that is to go.'
export const deletedAlready = 'That photo is not there any more: it was deleted meanwhile.'
