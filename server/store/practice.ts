import type { Access } from './access.ts'
import { type EventRecord, eventColumns, eventRecord } from './jobs/rows.ts'

/** One round at the practice bench, as lists show it. */
export interface RoundRecord {
  readonly id: number
  /** As typed; may be empty. */
  readonly who: string
  readonly openedAt: Date
  /** What came of it; null while it goes on, or where it cannot be read. The store does not look inside. */
  readonly result: unknown
}

/** Rounds as append-only lists of events. Every promise resolves only after the write is durable. */
export class PracticeRecords {
  readonly #access: Access

  constructor(access: Access) {
    this.#access = access
  }

  /** Writes a new round with its first event and returns its number. */
  async open(who: string, first: EventRecord): Promise<number> {
    const at = first.at.toISOString()
    return this.#access.write(async (write) => {
      const { id } = await write
        .insertInto('practice_rounds')
        .values({ who, version: 1, opened_at: at, changed_at: at })
        .returning('id')
        .executeTakeFirstOrThrow()
      await write
        .insertInto('practice_events')
        .values({ round: id, seq: 1, ...eventColumns(first) })
        .execute()
      return id
    })
  }

  /**
   * The events of a round in order; none where there is no such round.
   * @throws StoreTrouble where one of them is damaged, or missing between others.
   */
  async events(id: number): Promise<EventRecord[]> {
    const rows = await this.#access.read((database) =>
      database
        .selectFrom('practice_events')
        .selectAll()
        .where('round', '=', id)
        .orderBy('seq')
        .execute(),
    )
    return rows.map((row, index) => eventRecord(row, index, { number: id, what: 'round' }))
  }

  /** Appends one event if the round still is at that version, with its result where that ends it. */
  async append(
    id: number,
    version: number,
    event: EventRecord,
    result?: unknown,
  ): Promise<'written' | 'stale'> {
    return this.#access.write(async (write) => {
      const { numUpdatedRows } = await write
        .updateTable('practice_rounds')
        .set({
          version: version + 1,
          changed_at: event.at.toISOString(),
          ...(result !== undefined && { result: JSON.stringify(result) }),
        })
        .where('id', '=', id)
        .where('version', '=', version)
        .executeTakeFirst()
      if (numUpdatedRows === 0n) return 'stale'
      await write
        .insertInto('practice_events')
        .values({ round: id, seq: version + 1, ...eventColumns(event) })
        .execute()
      return 'written'
    })
  }

  /** The rounds of one person, newest first. */
  async of(who: string, limit: number): Promise<RoundRecord[]> {
    const rows = await this.#access.read((database) =>
      database
        .selectFrom('practice_rounds')
        .selectAll()
        .where('who', '=', who)
        .orderBy('id', 'desc')
        .limit(limit)
        .execute(),
    )
    return rows.map(({ id, opened_at, result }) => ({
      ...{ id, who },
      openedAt: new Date(opened_at),
      result: resultIn(result),
    }))
  }

  /** Everybody who gave a name, in the order of the alphabet. */
  async people(): Promise<string[]> {
    const rows = await this.#access.read((database) =>
      database
        .selectFrom('practice_rounds')
        .select('who')
        .distinct()
        .where('who', '!=', '')
        .orderBy('who')
        .execute(),
    )
    return rows.map(({ who }) => who)
  }
}

function resultIn(text: string | null): unknown {
  try {
    return text === null ? null : JSON.parse(text)
  } catch {
    return null
  }
}
