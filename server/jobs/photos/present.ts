import type { PhotoRecord } from '../../store/photos/records.ts'
import type { FoundJob } from '../standing/find.ts'
import { ticketOf } from '../standing/ticket.ts'
import { dateAndTime, upperFirst } from '../words/sentences.ts'
import { hint } from './problems.ts'
import type { PhotosPage, PhotoView } from './view.ts'

/** What was sent and could not be taken: a picture, or that one goes. */
export type RefusedPhoto =
  | { readonly check: string; readonly problem: string }
  | { readonly notice: string }

/** The page of a job's photos; `refused` is what was sent and could not be taken. */
export function presentPhotos(
  found: FoundJob,
  photos: readonly PhotoRecord[],
  refused?: RefusedPhoto,
): PhotosPage {
  const { job, kase, folded } = found
  const read = [...folded.readings.keys()].flatMap((check) => kase.checks.get(check) ?? [])
  // What was read comes first: that is what a photo is taken of.
  const cards = new Set([...read, ...kase.checks.values()])
  const chosen = refused && 'check' in refused ? refused.check : ''
  return {
    title: `${refused ? 'Not taken: ' : ''}Job ${job.id}: photos`,
    job: ticketOf(job),
    photos: photoViews(found, photos),
    subjects: [
      { value: '', says: machineItself, chosen: chosen === '' },
      ...[...cards].map(({ id, title }) => ({
        value: id,
        says: upperFirst(title),
        chosen: id === chosen,
      })),
    ],
    hint,
    accept: 'image/jpeg,image/png,image/webp',
    action: `/jobs/${job.id}/photos`,
    removal: `/jobs/${job.id}/photo-removals`,
    ...(refused && 'problem' in refused ? { problem: refused.problem } : refused),
  }
}

const machineItself = 'The machine'

/** Photos with what they show, in the order in which they were added. */
export function photoViews(
  { job, kase }: Pick<FoundJob, 'job' | 'kase'>,
  photos: readonly PhotoRecord[],
): PhotoView[] {
  return photos.map(({ id, check, width, height, addedAt }) => ({
    id,
    src: `/jobs/${job.id}/photos/${id}`,
    width,
    height,
    caption: check === null ? machineItself : upperFirst(kase.checks.get(check)?.title ?? check),
    when: dateAndTime(addedAt),
  }))
}
