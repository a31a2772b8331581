import {
  isNode,
  isScalar,
  LineCounter,
  type ParsedNode,
  parseDocument,
  type YAMLParseError,
} from 'yaml'
import type { z } from 'zod'
import type { Problem } from './knowledge.ts'
import { shapeWords } from './schema/shape-words.ts'

/** A file of knowledge, read: its value if it has the right shape, else what is wrong with it. */
export interface YamlFile {
  readonly file: string
  readonly value: object | null
  readonly problems: readonly Problem[]
  readonly lineOf: (path: readonly PropertyKey[]) => number
}

/** Reads YAML text and checks its shape; every problem carries the line it stands on. */
export function readYaml(file: string, text: string, schema: z.ZodType): YamlFile {
  const lines = new LineCounter()
  const document = parseDocument(text, {
    lineCounter: lines,
    prettyErrors: false,
    uniqueKeys: same,
  })
  // Parsed again for each problem: keeping every document for them would cost the server its memory.
  const lineOf = (path: readonly PropertyKey[]) => lineIn(text, path)
  const broken = document.errors.map((error) => ({
    file,
    line: lines.linePos(error.pos[0]).line,
    says: brokenWords(error, text),
  }))
  if (broken.length > 0) return { file, value: null, problems: broken, lineOf }

  const parsed = schema.safeParse(document.toJS(), { error: shapeWords })
  if (parsed.success) return { file, value: parsed.data as object, problems: [], lineOf }
  const problems = firstOfEach(parsed.error.issues).map((issue) => ({
    file,
    line: lineOf(issue.path),
    says: `${placeOf(issue)}: ${issue.message}`,
  }))
  return { file, value: null, problems, lineOf }
}

const placeOf = ({ path }: z.core.$ZodIssue): string => path.map(String).join('.') || 'the file'

/** What is no list at all is too short or too long a one, too: the first word on a place is enough. */
function firstOfEach(issues: readonly z.core.$ZodIssue[]): z.core.$ZodIssue[] {
  const places = new Map<string, z.core.$ZodIssue>()
  for (const issue of issues) {
    if (!places.has(placeOf(issue))) places.set(placeOf(issue), issue)
  }
  return [...places.values()]
}

/** A pin may be called 1 or '1': whichever it is, read twice the second would hide the first. */
const same = (one: ParsedNode, other: ParsedNode) =>
  isScalar(one) && isScalar(other) && String(one.value) === String(other.value)

function brokenWords({ code, message, pos }: YAMLParseError, text: string): string {
  if (code !== 'DUPLICATE_KEY') return `this is not YAML: ${message}`
  const [name = ''] = /^[^\s:]+/.exec(text.slice(pos[0])) ?? []
  return `${name} stands here twice: keep one of the two`
}

/** The line on which the nearest place stands that exists on the way down the path. */
function lineIn(text: string, path: readonly PropertyKey[]): number {
  const lines = new LineCounter()
  const document = parseDocument(text, { lineCounter: lines })
  for (let length = path.length; length > 0; length -= 1) {
    const node = document.getIn(path.slice(0, length), true)
    if (isNode(node) && node.range) return lines.linePos(node.range[0]).line
  }
  return 1
}
