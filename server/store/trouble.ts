/** What can be wrong with what is kept, and can be mended by a person. */
export type TroubleKind = FileTrouble | 'damaged event'
export type FileTrouble = keyof typeof words

interface Words {
  readonly title: string
  readonly says: string
}

/** Of each kind: a title, and what happened and what to do, in one sentence that may follow a colon, too. */
const words = {
  'in use': {
    title: 'In use by another program',
    says: 'Another program holds coilhound.sqlite; close it, or wait until it is done.',
  },
  gone: {
    title: 'The jobs are not where they were',
    says: 'coilhound.sqlite was deleted, moved or replaced while Coilhound was running; put it back, or start Coilhound again to go on with what stands there now.',
  },
  full: {
    title: 'The disk is full',
    says: 'The disk is full; make room on it.',
  },
  'not writable': {
    title: 'The jobs cannot be written',
    says: 'coilhound.sqlite cannot be opened and written; change who may write there, or set COILHOUND_DATA to another folder.',
  },
  'cannot be read': {
    title: 'The disk fails',
    says: 'The disk cannot be read or written; see that it is connected and sound.',
  },
  damaged: {
    title: 'The jobs are damaged',
    says: 'coilhound.sqlite is damaged, or no database; stop Coilhound and put a copy from before in its place, or move it away to begin without jobs.',
  },
  'later version': {
    title: 'The jobs are of a later version',
    says: 'coilhound.sqlite was written by a later version of Coilhound; start that version, or set COILHOUND_DATA to another folder.',
  },
} as const satisfies Readonly<Record<string, Words>>

/** Trouble with the store. The message is for people; the cause is for the log. */
export class StoreTrouble extends Error {
  readonly kind: TroubleKind
  readonly title: string

  constructor(kind: TroubleKind, { title, says }: Words, cause: unknown) {
    super(says, { cause })
    this.kind = kind
    this.title = title
  }
}

/** Trouble with the whole file. */
export function trouble(kind: FileTrouble, cause: unknown): StoreTrouble {
  return new StoreTrouble(kind, words[kind], cause)
}

/** What stands at one place of a job or a round cannot be read. Everything else can be used as before. */
export function damagedEvent(
  number: number,
  seq: number,
  cause: unknown,
  what: 'job' | 'round' = 'job',
): StoreTrouble {
  const says = `Event ${seq} of ${what} ${number} is damaged, so that ${what} alone cannot be shown; stop Coilhound and put a copy of coilhound.sqlite from before in its place, or open the ${what} anew.`
  return new StoreTrouble('damaged event', { title: `This ${what} is damaged`, says }, cause)
}
