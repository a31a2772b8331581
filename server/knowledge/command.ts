import { statSync, writeFileSync } from 'node:fs'
import { z } from 'zod'
import { warnings } from './lint/index.ts'
import { soundTrees, type Trees } from './load.ts'
import { KnowledgeProblems, problemLine } from './problems.ts'
import { machinesReport, printMachine } from './reports/machines.ts'
import { ownerReport } from './reports/owner.ts'
import { printRole, printRoleInFull, rolesReport } from './reports/roles.ts'
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

/** What stands after the name of a command: a folder of trees, and a name in them. */
interface Words {
  readonly folder?: string | undefined
  readonly name?: string | undefined
}

/** Each returns the exit code. */
const commands: Readonly<Record<string, (words: Words) => number>> = {
  lint: ({ folder, name }) =>
    withTrees(({ knowledge, locate }) => {
      for (const each of warnings(knowledge, locate)) console.log(`look at ${problemLine(each)}`)
      const { complaints, partKinds, checkKinds, machines } = knowledge
      console.log(
        `knowledge is sound: ${complaints.size} complaints, ${partKinds.size} part kinds, ` +
          `${checkKinds.size} check kinds, ${machines.size} machine${machines.size === 1 ? '' : 's'}`,
      )
      return 0
    }, folder ?? name),
  testability: ({ folder, name }) =>
    withTrees(({ knowledge }) => {
      const { complaints } = knowledge
      const complaint = complaints.get(name ?? '')
      if (name !== undefined && complaint === undefined) {
        const all = [...complaints.keys()].join(', ')
        console.error(`no complaint and no folder is called ${name}: there is ${all}`)
        return 1
      }
      const lost = complaint
        ? reportComplaint(knowledge, complaint, console.log)
        : reportTestability(knowledge, console.log)
      for (const fault of lost) {
        console.error(`ends neither named nor in a stated group: ${fault}`)
      }
      return lost.length === 0 ? 0 : 1
    }, folder),
  roles: ({ folder, name }) =>
    withTrees(({ knowledge }) => {
      const reports = rolesReport(knowledge).filter(({ role }) => [undefined, role].includes(name))
      for (const report of reports) {
        console.log(name === undefined ? printRole(report) : printRoleInFull(report))
      }
      if (reports.length > 0) return 0
      console.error(`no role is called ${name}: npm run roles lists them all`)
      return 1
    }, folder),
  machines: ({ folder, name }) =>
    withTrees(({ knowledge }) => {
      const reports = machinesReport(knowledge).filter(({ machine }) =>
        [undefined, machine].includes(name),
      )
      for (const report of reports) console.log(printMachine(report))
      if (reports.length > 0) return 0
      console.error(`no machine is called ${name}: npm run machines lists them all`)
      return 1
    }, folder),
  owner: ({ folder }) =>
    withTrees(({ knowledge }) => {
      for (const line of ownerReport(knowledge)) console.log(line)
      return 0
    }, folder),
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

const isFolder = (word: string) => statSync(word, { throwIfNoEntry: false })?.isDirectory() ?? false

const [asked, ...words] = process.argv.slice(2)
if (import.meta.filename === process.argv[1]) {
  const command = commands[asked ?? '']
  if (command === undefined) console.error(`write one of: ${Object.keys(commands).join(', ')}`)
  process.exitCode =
    command?.({ folder: words.find(isFolder), name: words.find((word) => !isFolder(word)) }) ?? 1
}
