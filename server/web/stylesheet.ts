import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { staticFolder } from './folders.ts'

/** The files of `static/style/`, one a room, in the order they are joined: a later rule wins. */
const rooms = [
  ...['base', 'words', 'masthead', 'boxes', 'head', 'rooms', 'cautions'],
  ...[
    'check',
    'answer',
    'answer-bar',
    'verdict',
    'readings',
    'suspects',
    'tree',
    'stands',
    'others',
  ],
  ...['health', 'rates', 'opening', 'finding', 'machines', 'jobs', 'new-job', 'sheet', 'cards'],
  ...['over', 'phone', 'practice', 'learning', 'wires', 'job-sheet', 'photos', 'aloud'],
  ...['preferences', 'paper', 'print'],
]

/** The one stylesheet that every page asks for. */
export function stylesheet(): string {
  return rooms
    .map((room) => readFileSync(join(staticFolder, 'style', `${room}.css`), 'utf8'))
    .join('\n')
}
