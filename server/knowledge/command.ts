import { writeFileSync } from 'node:fs'
import { z } from 'zod'
import { warnings } from './lint/index.ts'
import { soundTrees, type Trees } from './load.ts'
import { KnowledgeProblems, problemLine } from './problems.ts'
import { ownerReport } from './reports/owner.ts'
import { printRole, rolesReport } from './reports/roles.ts'
import { reportComplaint, reportTestability } from './reports/testability.ts'
import { fileKinds } from './schema/index.ts'

const trees = `${import.meta.dirname}/../../trees`

/** JSON Schema for editors, from the same zod schemas that the loader uses. */
export function jsonSchemas(): { readonly file: string; readonly text: string }[] {
  return fileKinds.map(({ name, schema }) => ({
    file: `${trees}/schema/${name}.json`,
    text: `${JSON.stringify(z.toJSONSchema(schema, { io: 'input' }), null, 2)}\n`,
  }))
}

/** Each returns the exit code; a word after its name is for it. */
const commands: Readonly<Record<string, (word?: string) => number>> = {
  lint: (folder) =>
    withTrees(({ knowledge, locate }) => {
      for (const each of warnings(knowledge, locate)) console.log(`look at ${problemLine(each)}`)
      const { complaints, partKinds, checkKinds, machines } = knowledge
      console.log(
        `knowledge is sound: ${complaints.size} complaints, ${partKinds.size} part kinds, ` +
          `${checkKinds.size} check kinds, ${machines.size} machines`,
      )
      return 0
    }, folder),
  testability: (id) =>
    withTrees(({ knowledge }) => {
      const { complaints } = knowledge
      const complaint = complaints.get(id ?? '')
      if (id !== undefined && complaint === undefined) {
        console.error(`no complaint is called ${id}: there is ${[...complaints.keys()].join(', ')}`)
        return 1
      }
      const lost = complaint
        ? reportComplaint(knowledge, complaint, console.log)
        : reportTestability(knowledge, console.log)
      for (const fault of lost) {
        console.error(`ends neither named nor in a stated group: ${fault}`)
      }
      return lost.length === 0 ? 0 : 1
    }),
  roles: (id) =>
    withTrees(({ knowledge }) => {
      const reports = rolesReport(knowledge).filter(({ role }) => id === undefined || role === id)
      for (const report of reports) console.log(printRole(report))
      if (reports.length > 0) return 0
      console.error(`no role is called ${id}: npm run roles lists them all`)
      return 1
    }),
  owner: () =>
    withTrees(({ knowledge }) => {
      for (const line of ownerReport(knowledge)) console.log(line)
      return 0
    }),
  schema: () => {
    for (const { file, text } of jsonSchemas()) writeFileSync(file, text)
    return 0
  },
}

/** Does something with the knowledge that ships, or with that of another folder, or says what is wrong with it. */
function withTrees(act: (trees: Trees) => number, folder = trees): number {
  try {
    return act(soundTrees(folder))
  } catch (error) {
    if (!(error instanceof KnowledgeProblems)) throw error
    console.error(error.message)
    return 1
  }
}

const [asked, word] = process.argv.slice(2)
if (import.meta.filename === process.argv[1]) {
  const command = commands[asked ?? '']
  if (command === undefined) console.error(`write one of: ${Object.keys(commands).join(', ')}`)
  process.exitCode = command?.(word) ?? 1
}
