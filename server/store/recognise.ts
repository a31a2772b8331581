import { constants } from 'node:os'
import { type FileTrouble, trouble } from './trouble.ts'

/** The trouble behind an error of the driver or the file system; any other error as it is. */
export function recognised(problem: unknown): unknown {
  const kind = kindOf(Object(problem))
  return kind === undefined ? problem : trouble(kind, problem)
}

/** What the driver and the file system tell of an error. */
interface Told {
  readonly code?: unknown
  readonly message?: unknown
  /** SQLite's extended result code. */
  readonly errcode?: unknown
  /** Where the system refused something. */
  readonly systemErrno?: unknown
}

function kindOf({ code, message, errcode, systemErrno }: Told): FileTrouble | undefined {
  if (code !== 'ERR_SQLITE_ERROR') return ofSystem[String(code)]
  const result = Number(errcode ?? codeOfMessage[String(message)])
  if (noRoom.includes(Number(systemErrno))) return 'full'
  // The low byte of an extended code is the primary one.
  return ofCode[result & 0xff]
}

/** Disk, quota and limit: for a person they are the same. */
const { ENOSPC, EDQUOT, EFBIG } = constants.errno
const noRoom: readonly number[] = [ENOSPC, EDQUOT, EFBIG]

const ofSystem: Readonly<Record<string, FileTrouble>> = {
  EACCES: 'not writable',
  EPERM: 'not writable',
  EROFS: 'not writable',
  ENOSPC: 'full',
  EDQUOT: 'full',
  EIO: 'cannot be read',
}

/** By primary result code: https://sqlite.org/rescode.html */
const ofCode: Readonly<Record<number, FileTrouble>> = {
  5: 'in use',
  8: 'not writable',
  10: 'cannot be read',
  11: 'damaged',
  13: 'full',
  14: 'not writable',
  26: 'damaged',
}

/** The driver leaves the code out where a query that returns rows fails; SQLite's own words remain. */
const codeOfMessage: Readonly<Record<string, number>> = {
  'database is locked': 5,
  'attempt to write a readonly database': 8,
  'disk I/O error': 10,
  'database disk image is malformed': 11,
  'database or disk is full': 13,
  'unable to open database file': 14,
  'file is not a database': 26,
}
