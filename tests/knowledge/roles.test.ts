import { cpSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { fits } from '../../server/knowledge/fits.ts'
import { warnings } from '../../server/knowledge/lint/index.ts'
import { soundTrees } from '../../server/knowledge/load.ts'
import { machinesReport, printMachine } from '../../server/knowledge/reports/machines.ts'
import { printRoleInFull, rolesReport } from '../../server/knowledge/reports/roles.ts'
import type { Complaint, Machine } from '../../server/knowledge/schema/index.ts'
import { emptyFolder } from '../support/folder.ts'
import { shippedKnowledge, shippedTrees } from '../support/knowledge.ts'

const withRoles = (...roles: string[]) =>
  ({ parts: roles.map((role) => ({ role })) }) as unknown as Machine
const needing = (...needs: Complaint['needs']) => ({ needs }) as Complaint

describe('what a complaint needs', () => {
  const spark = needing('plug', { either: [['exciter', 'igniter'], ['module']] })

  it('is met by either of two lists of roles', () => {
    expect(fits(spark, withRoles('plug', 'exciter', 'igniter'))).toBe(true)
    expect(fits(spark, withRoles('module', 'plug'))).toBe(true)
  })

  it('is not met by a part of each, or without what both ask for', () => {
    expect(fits(spark, withRoles('plug', 'exciter'))).toBe(false)
    expect(fits(spark, withRoles('exciter', 'igniter', 'module'))).toBe(false)
  })
})

describe('knowledge without any machine', () => {
  it('is sound, and says of every complaint that it fits none', () => {
    const folder = emptyFolder()
    cpSync(shippedTrees, folder, { recursive: true })
    rmSync(join(folder, 'machines'), { recursive: true })
    const { knowledge, locate } = soundTrees(folder)
    expect(knowledge.machines.size).toBe(0)
    const said = warnings(knowledge, locate)
    expect(said).toHaveLength(knowledge.complaints.size)
    expect(said[0]).toMatchObject({
      file: expect.stringMatching(/^complaints/),
      says: 'no machine has the parts that this complaint needs',
    })
  })
})

it('a machine that no complaint fits is said', () => {
  const { knowledge, locate } = soundTrees(shippedTrees)
  const complaints = new Map([...knowledge.complaints].filter(([id]) => id === 'not-charging'))
  const said = warnings({ ...knowledge, complaints }, locate)
  expect(said.map(({ file }) => file)).toContain('machines/pedlar-1c.yaml')
  expect(said.map(({ file }) => file)).not.toContain('machines/haulmoor-1e.yaml')
})

describe('the report of the roles', () => {
  const reports = new Map(rolesReport(shippedKnowledge()).map((each) => [each.role, each]))

  it('tells what asks for a role, and what a part that plays it switches on', () => {
    const pump = reports.get('pump')!
    expect(pump.neededBy).toContain('no-pump-prime')
    expect(pump.checks).toContain('pump-listen')
    expect(reports.get('exciter')!.limits).toContain('peak-voltage')
    expect(reports.get('run-exciter')!.inTreeOf).toContain('no-spark')
  })

  it('says of each property of one role what it is, and its unit or that it is looked at', () => {
    const told = printRoleInFull(reports.get('points')!)
    expect(told).toContain('\n    points-gap: gap at their widest, in mm\n')
    expect(told).toContain(
      '\n    opening-angle: where they open, as angle of the crankshaft, in °\n',
    )
    expect(told).toContain('\n    points-look: look of their faces, looked at\n')
  })

  it('finds no role that nothing asks for', () => {
    const idle = [...reports.values()].filter(
      ({ neededBy, inTreeOf }) => neededBy.length + inTreeOf.length === 0,
    )
    expect(idle.map(({ role }) => role)).toEqual([])
  })
})

describe('the report of the machines', () => {
  it('tells what fits a sheet, and what would with one role more', () => {
    const knowledge = shippedKnowledge()
    const { parts, ...rest } = knowledge.machines.get('clipwell-1m')!
    const machine = { ...rest, parts: parts.filter(({ role }) => role !== 'stop-ground') }
    const machines = new Map([[machine.id, machine]])
    const [report] = machinesReport({ ...knowledge, machines })
    expect(report!.fits).toContain('no-spark')
    expect(report!.fits).not.toContain('will-not-stop')
    expect(report!.oneMissing).toContainEqual({ complaint: 'will-not-stop', role: 'stop-ground' })
    expect(report!.oneMissing.map(({ complaint }) => complaint)).not.toContain('dead-lights')
    expect(printMachine(report!)).toMatch(
      /^clipwell-1m Hathersby Clipwell 1m, \d+ readings\n {2}fits: /,
    )
  })
})

it('a circuit is doubted where its name is a slip, and not where its machine was taken away', () => {
  const { knowledge, locate } = soundTrees(shippedTrees)
  const [id, circuit] = [...knowledge.circuits][0]!
  const slip = new Map(knowledge.circuits).set(`${id}x`, { ...circuit, id: `${id}x` })
  const at = () => ({ file: 'circuits/slip.yaml', line: 1 })
  const said = warnings({ ...knowledge, circuits: slip }, at)
  expect(said.map(({ says }) => says)).toContain(`no machine is called ${id}x: did you mean ${id}?`)
  const machines = new Map([...knowledge.machines].filter(([name]) => name !== id))
  const gone = warnings({ ...knowledge, machines }, locate)
  expect(gone.filter(({ file }) => file.startsWith('circuits'))).toEqual([])
})
