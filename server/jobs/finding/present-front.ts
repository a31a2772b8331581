import { complaintsFor } from '../../knowledge/fits.ts'
import type { Knowledge } from '../../knowledge/knowledge.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import type { Machine } from '../../knowledge/schema/index.ts'
import { counted } from '../../web/words.ts'
import type { JobLine } from '../record/events.ts'
import { findMachines } from './find-machine.ts'
import { findParts } from './find-part.ts'
import { jobRow } from './job-row.ts'
import type { FrontPage, MachineView } from './views.ts'

/** What somebody wants to see of the front page. */
export interface AskedOfFront {
  /** What was typed to find a machine by; may be empty. */
  readonly find: string
  /** The machine whose complaints are wanted; empty where none was chosen. */
  readonly machine: string
}

/** The front page: the work in progress, and the machines with the complaints that fit them. */
export function presentFront(
  knowledge: Knowledge,
  inProgress: readonly JobLine[],
  { find, machine }: AskedOfFront,
): FrontPage {
  const chosen = knowledge.machines.get(machine)
  const found = chosen ? [chosen] : findMachines(knowledge, find)
  const shown = found.slice(0, mostMachines)
  const parts = chosen ? [] : findParts(knowledge, find)
  return {
    title: 'Work and machines',
    inProgress: inProgress.map((line) => jobRow(knowledge, line)),
    find,
    says: foundWords(found.length, knowledge.machines.size, find, parts.length > 0),
    machines: shown.map((each) => machineView(knowledge, each, found.length === 1)),
    parts,
    ...(found.length < knowledge.machines.size && {
      all: { href: '/', text: 'All machines' },
    }),
  }
}

/** As many as a phone shows without much scrolling. */
const mostMachines = 8

function foundWords(found: number, all: number, find: string, orPart: boolean): string {
  if (all === 0)
    return 'There is no machine yet: write its sheet in trees/machines, and it stands here.'
  if (found === 0 && orPart) return 'No machine is called so, but parts are.'
  if (found === 0) return `No machine is called “${find.trim()}”. Try fewer letters, or its maker.`
  if (found > mostMachines) {
    return `The first ${mostMachines} of ${counted(found, 'machine')}. Type more of the name.`
  }
  return found === all ? counted(all, 'machine') : `${found} of ${counted(all, 'machine')}`
}

function machineView(knowledge: Knowledge, machine: Machine, open: boolean): MachineView {
  const fitting = complaintsFor(knowledge, machine.id)
  return {
    id: machine.id,
    name: machineName(machine),
    family: machine.family,
    about: machine.about,
    limitsHref: `/machines/${encodeURIComponent(machine.id)}`,
    open,
    fitsNothing: fitting.length === 0,
    groups: Object.entries(knowledge.groups.groups).flatMap(([id, { name }]) => {
      const complaints = fitting.filter(({ group }) => group === id)
      return complaints.length === 0
        ? []
        : [{ name, complaints: complaints.map((each) => complaintView(machine, each)) }]
    }),
  }
}

function complaintView(
  machine: Machine,
  { id, title, owner }: { id: string; title: string; owner: string },
): MachineView['groups'][0]['complaints'][0] {
  const query = new URLSearchParams({ machine: machine.id, complaint: id })
  return { title, owner, href: `/jobs/new?${query}` }
}
