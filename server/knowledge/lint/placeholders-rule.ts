import { unknownPlaceholders } from '../instantiate/words.ts'
import type { Knowledge } from '../knowledge.ts'
import { rolesOf } from './names/known.ts'
import type { Report } from './report.ts'

/** What stands in braces is a placeholder, or the name of a role. */
export function placeholdersRule(knowledge: Knowledge, report: Report): void {
  const { checkKinds, partKinds, complaints, setups, home, cautions } = knowledge
  const roles = rolesOf(knowledge)
  const look = (entry: object, path: readonly PropertyKey[], texts: readonly string[]) => {
    for (const name of texts.flatMap((text) => unknownPlaceholders(text, roles))) {
      report.add(entry, path, `{${name}} is neither a placeholder nor a role`)
    }
  }
  for (const [, check] of checkKinds) {
    const { title, phone, why, teach = '', meter = '', answers = [] } = check
    look(check, ['do'], [title, phone, why, teach, meter, ...check.do])
    for (const [a, { says, phone: said = '', mend }] of answers.entries()) {
      look(check, ['answers', a], [says, said, mend?.do ?? ''])
    }
  }
  for (const [, kind] of partKinds) {
    look(kind, ['repair'], [kind.repair])
    look(kind, ['prove'], Object.values(kind.prove))
  }
  for (const [, complaint] of complaints) {
    const gates = { ...complaint.gates, ...complaint.watched }
    look(
      complaint,
      ['gates'],
      Object.values(gates).map(({ says }) => says),
    )
    look(complaint, ['prove'], Object.values(complaint.prove))
    look(complaint, ['elsewhere'], [complaint.elsewhere.says])
  }
  for (const [id, { says, do: steps, danger }] of Object.entries(home.ways)) {
    look(home, ['ways', id], [says, danger, ...steps])
  }
  for (const [id, { phone }] of Object.entries(cautions.cautions)) {
    look(cautions, ['cautions', id], [phone])
  }
  look(
    home,
    ['trial'],
    [...home.trial.do, ...home.trial.go, home.trial.lifted, ...home.trial.after],
  )
  for (const [id, { do: says, phone = '', undo }] of Object.entries(setups.setups)) {
    const back = typeof undo === 'object' ? [undo.do, undo.phone ?? ''] : []
    look(setups, ['setups', id], [says, phone, ...back])
  }
}
