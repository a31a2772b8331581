/** What can be wrong with the file that jobs are kept in, and can be mended by a person. */
export type TroubleKind = keyof typeof words

/** Of each kind: a title, and what happened and what to do, in one sentence that may follow a colon, too. */
const words = {
  'in use': {
    title: 'In use by another program',
    says: 'Another program holds coilhound.sqlite; close it, or wait until it is done.',
  },
  full: {
    title: 'The disk is full',
    says: 'The disk is full; make room on it.',
  },
  'not writable': {
    title: 'Not writable',
    says: 'It cannot be written to; set COILHOUND_DATA, or change who may write there.',
  },
  'cannot be read': {
    title: 'The disk fails',
    says: 'The disk cannot be read or written; see that it is connected and sound.',
  },
  damaged: {
    title: 'The jobs are damaged',
    says: 'coilhound.sqlite is damaged, or no database; put a copy from before in its place, or move it away.',
  },
} as const

/** Trouble with the store. The message is for people; the cause is for the log. */
export class StoreTrouble extends Error {
  readonly kind: TroubleKind

  constructor(kind: TroubleKind, cause: unknown) {
    super(words[kind].says, { cause })
    this.kind = kind
  }
}
