import type { Ticket } from '../standing/ticket.ts'

export interface PhotoView {
  readonly id: number
  readonly src: string
  /** In points, before it is turned upright. */
  readonly width: number
  readonly height: number
  /** What it shows: the title of a check, or the machine. */
  readonly caption: string
  /** "7 May 2031, 14:05" */
  readonly when: string
}

/** The photos of a job: those there are, and the form for one more. */
export interface PhotosPage {
  readonly title: string
  readonly job: Ticket
  readonly photos: readonly PhotoView[]
  /** What a photo can be of. */
  readonly subjects: readonly {
    readonly value: string
    readonly says: string
    readonly chosen: boolean
  }[]
  /** What kinds, and how large. */
  readonly hint: string
  /** For the dialogue in which a file is chosen. */
  readonly accept: string
  readonly action: string
  readonly removal: string
  /** Why the picture was not taken. */
  readonly problem?: string
  /** Why none was deleted. */
  readonly notice?: string
}
