import type { Knowledge } from '../../knowledge.ts'
import type { Report } from '../report.ts'

/** What is drawn on a face is a pin, and one can say what is on it. */
export function barePinsRule(knowledge: Knowledge, report: Report): void {
  for (const [, machine] of knowledge.machines) {
    for (const [id, { name, face, pins }] of Object.entries(machine.connectors)) {
      const drawn = face.rows.flat().filter((pin) => pin !== null)
      for (const pin of drawn.filter((each) => !(String(each) in pins))) {
        const says = `pin ${pin} is on the face of the ${name} and not among its pins: say what is on it, or write null where there is no pin`
        report.add(machine, ['connectors', id, 'face'], says)
      }
    }
  }
}
