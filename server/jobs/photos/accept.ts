import type { Case } from '../../knowledge/case.ts'
import { cleaned } from '../../photos/clean.ts'
import type { NewPhoto } from '../../store/photos/records.ts'
import { noSuchSubject, nothingChosen, notWhole, problems, tooLarge } from './problems.ts'
import { mostBytes, type Upload } from './upload.ts'

export type AcceptedPhoto =
  | { readonly ok: true; readonly photo: Omit<NewPhoto, 'addedAt'> }
  | {
      readonly ok: false
      readonly status: 413 | 422
      readonly check: string
      readonly problem: string
    }

/** What came with the form of a photo, cleaned, or the sentence that says why it is not taken. */
export async function acceptPhoto(
  { checks }: Case,
  upload: Upload | undefined,
): Promise<AcceptedPhoto> {
  if (upload?.kind === 'too large') return refused(tooLarge, '', 413)
  if (upload?.kind !== 'form') return refused(upload ? notWhole : nothingChosen)
  const [file, subject] = [upload.form.get('photo'), upload.form.get('check')]
  const check = typeof subject === 'string' && checks.has(subject) ? subject : ''
  if (subject !== check && subject !== '' && subject !== null) return refused(noSuchSubject)
  if (!(file instanceof File) || file.name === '') return refused(nothingChosen, check)
  if (file.size > mostBytes) return refused(tooLarge, check, 413)
  const picture = cleaned(new Uint8Array(await file.arrayBuffer()))
  if (typeof picture === 'string') return refused(problems[picture], check)
  return { ok: true, photo: { check: check === '' ? null : check, ...picture } }
}

function refused(problem: string, check = '', status: 413 | 422 = 422): AcceptedPhoto {
  return { ok: false, status, check, problem }
}
