import { writeFileSync } from 'node:fs'
import { z } from 'zod'
import { KnowledgeProblems, loadKnowledge } from './load.ts'
import { fileKinds } from './schema/index.ts'
import { testabilityReport } from './testability-report.ts'

const trees = `${import.meta.dirname}/../../trees`

/** JSON Schema for editors, from the same zod schemas that the loader uses. */
export function jsonSchemas(): { readonly file: string; readonly text: string }[] {
  return fileKinds.map(({ name, schema }) => ({
    file: `${trees}/schema/${name}.json`,
    text: `${JSON.stringify(z.toJSONSchema(schema, { io: 'input' }), null, 2)}\n`,
  }))
}

const commands: Readonly<Record<string, () => number>> = {
  lint: () => {
    try {
      const knowledge = loadKnowledge(trees)
      console.log(
        `knowledge is sound: ${knowledge.complaints.size} complaints, ${knowledge.partKinds.size} part kinds, ` +
          `${knowledge.checkKinds.size} check kinds, ${knowledge.machines.size} machines`,
      )
      for (const line of testabilityReport(knowledge)) console.log(line)
      return 0
    } catch (error) {
      if (!(error instanceof KnowledgeProblems)) throw error
      console.error(error.message)
      return 1
    }
  },
  schema: () => {
    for (const { file, text } of jsonSchemas()) writeFileSync(file, text)
    return 0
  },
}

const asked = process.argv[2]
if (import.meta.filename === process.argv[1]) {
  const command = commands[asked ?? '']
  if (command === undefined) console.error(`write one of: ${Object.keys(commands).join(', ')}`)
  process.exitCode = command?.() ?? 1
}
