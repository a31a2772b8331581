import { cpSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { testability } from '../../server/diagnosis/testability/testability.ts'
import { allFits } from '../../server/knowledge/fits.ts'
import { caseFor } from '../../server/knowledge/instantiate.ts'
import { loadKnowledge } from '../../server/knowledge/load.ts'
import { fileKinds } from '../../server/knowledge/schema/index.ts'
import { emptyFolder } from '../support/folder.ts'
import { objectsIn, type Saying } from '../support/json-schema.ts'
import { shippedKnowledge, shippedTrees } from '../support/knowledge.ts'

const guide = readFileSync(resolve(import.meta.dirname, '../../DEVELOPERS.md'), 'utf8')

/** The files that the guide shows whole, by their path under `trees/`. */
const examples = new Map(
  [...guide.matchAll(/^`trees\/(\S+\.yaml)`:\n\n```yaml\n(.*?)^```$/gms)].map(
    ([, path, text]) => [path!, text!] as const,
  ),
)

describe('the example in the guide', () => {
  it('is a complaint and a check that do not ship', () => {
    const paths = [...examples.keys()]
    expect(paths.map((path) => dirname(path))).toEqual(['complaints', 'checks'])
    const { complaints, checkKinds } = shippedKnowledge()
    const shipped = [...complaints.keys(), ...checkKinds.keys()]
    expect(shipped.filter((id) => paths.some((path) => path.endsWith(`/${id}.yaml`)))).toEqual([])
  })

  it('is sound, and every fault of it ends with its part named or in a stated group', () => {
    const folder = emptyFolder()
    cpSync(shippedTrees, folder, { recursive: true })
    for (const [path, text] of examples) writeFileSync(join(folder, path), text)
    const knowledge = loadKnowledge(folder)
    const [complaint, check] = [...examples.keys()].map(
      (path) => /(\w[\w-]*)\.yaml$/.exec(path)![1]!,
    )
    const cases = allFits(knowledge)
      .filter((fit) => fit.complaint.id === complaint)
      .map(({ machine }) => caseFor(knowledge, machine.id, complaint!))
    expect(cases).not.toEqual([])
    for (const { model } of cases) {
      const found = testability(model)
      expect(found.faults).toBeGreaterThan(3)
      expect(found.missed).toEqual([])
      expect(model.checks.map(({ id }) => id)).toContain(check)
      expect(found.neverAsked).not.toContain(check)
    }
  })
})

/** The tables of what must and may be said, below one heading: a row by each name that it is for. */
function rowsUnder(heading: string): ReadonlyMap<string, Saying> {
  const section = guide.split(/^### /m).find((each) => each.startsWith(`${heading}\n`)) ?? ''
  const [, table = ''] = section.split('| in | must say | may say |\n| --- | --- | --- |\n')
  const quoted = (cell: string) => [...cell.matchAll(/`(\S+?)`/g)].map(([, name]) => name!).sort()
  return new Map(
    [...table.matchAll(/^\| (.*?) \| (.*?) ?\| (.*?) ?\|$/gm)].flatMap(([, names, must, may]) =>
      names!
        .replaceAll('`', '')
        .split(', ')
        .map((name) => [name, { must: quoted(must!), may: quoted(may!) }] as const),
    ),
  )
}

const schemaOf = (kind: string) => fileKinds.find(({ name }) => name === kind)!.schema

describe('what the guide says that a file must and may say', () => {
  it.each([
    ['A machine', 'machine'],
    ['A circuit', 'circuit'],
    ['A complaint', 'complaint'],
    ['A part kind', 'part-kind'],
    ['A check', 'check-kind'],
  ])('is what the schema says: %s', (heading, kind) => {
    expect(rowsUnder(heading)).toEqual(objectsIn(schemaOf(kind), 'file'))
  })

  it('is what the schema says, for whatever else there is', () => {
    const others = ['tools', 'setups', 'cautions', 'colours', 'groups', 'roles'].flatMap((kind) => {
      // The whole file holds the entries and no more.
      const [, ...entries] = objectsIn(schemaOf(kind), `${kind}.yaml`)
      return entries.map(
        ([name, saying]) => [name === kind ? `${kind}.yaml` : name, saying] as const,
      )
    })
    const all = new Map([...objectsIn(schemaOf('meter'), 'meters/'), ...others])
    expect(rowsUnder('Meters, tools, set-ups, cautions, colours, groups, roles')).toEqual(all)
  })

  it('is what the schema says, for what an owner has and how they get home', () => {
    const both = ['owner', 'home'].flatMap((kind) => [...objectsIn(schemaOf(kind), `${kind}.yaml`)])
    expect(rowsUnder('An owner on the phone')).toEqual(new Map(both))
  })

  it('is what the schema says, for the words of the trade', () => {
    const rows = objectsIn(schemaOf('glossary'), 'glossary.yaml')
    expect(rowsUnder('Words of the trade')).toEqual(new Map(rows))
  })
})
