import type { Access } from '../access.ts'
import type { Tables } from '../tables.ts'

/** A photo of a job without its bytes. */
export interface PhotoRecord {
  readonly id: number
  /** The check it shows something of; null where it shows the machine. */
  readonly check: string | null
  readonly type: string
  readonly width: number
  readonly height: number
  readonly addedAt: Date
}

export type NewPhoto = Omit<PhotoRecord, 'id'> & { readonly bytes: Uint8Array }

/**
 * Photos of jobs. They are no events: nothing is worked out from one, and one that was deleted is gone.
 * Every promise resolves only after the write is durable.
 */
export class PhotoRecords {
  readonly #access: Access

  constructor(access: Access) {
    this.#access = access
  }

  /** Adds a photo to a job and returns its number; null, and nothing is written, where it has that many. */
  async add(job: number, photo: NewPhoto, most: number): Promise<number | null> {
    const { check, addedAt, type, width, height, bytes } = photo
    return this.#access.write(async (write) => {
      const { count } = await write
        .selectFrom('photos')
        .select(({ fn }) => fn.countAll<number>().as('count'))
        .where('job', '=', job)
        .executeTakeFirstOrThrow()
      if (count >= most) return null
      const { id } = await write
        .insertInto('photos')
        .values({
          job,
          of_check: check,
          type,
          width,
          height,
          added_at: addedAt.toISOString(),
          bytes,
        })
        .returning('id')
        .executeTakeFirstOrThrow()
      return id
    })
  }

  /** The photos of a job in the order in which they were added. */
  async list(job: number): Promise<PhotoRecord[]> {
    const rows = await this.#access.read((database) =>
      database.selectFrom('photos').select(shown).where('job', '=', job).orderBy('id').execute(),
    )
    return rows.map(({ of_check, added_at, ...row }) => ({
      ...row,
      check: of_check,
      addedAt: new Date(added_at),
    }))
  }

  /** One photo of a job with its bytes; null where there is none. */
  async read(
    job: number,
    id: number,
  ): Promise<(Pick<PhotoRecord, 'type' | 'addedAt'> & { readonly bytes: Uint8Array }) | null> {
    const row = await this.#access.read((database) =>
      database
        .selectFrom('photos')
        .select(['type', 'added_at', 'bytes'])
        .where('job', '=', job)
        .where('id', '=', id)
        .executeTakeFirst(),
    )
    return row ? { type: row.type, bytes: row.bytes, addedAt: new Date(row.added_at) } : null
  }

  /** Deletes a photo of a job, and says whether it was there. */
  async remove(job: number, id: number): Promise<boolean> {
    const { numDeletedRows } = await this.#access.write((write) =>
      write
        .deleteFrom('photos')
        .where('job', '=', job)
        .where('id', '=', id)
        .executeTakeFirstOrThrow(),
    )
    return numDeletedRows > 0n
  }
}

const shown = [
  ...(['id', 'of_check', 'type', 'width', 'height', 'added_at'] as const),
] satisfies (keyof Tables['photos'])[]
