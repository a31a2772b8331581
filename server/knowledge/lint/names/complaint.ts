import { rolesIn } from '../../fits.ts'
import { inputsOf, targetOf } from '../../instantiate/tree.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { Complaint } from '../../schema/index.ts'
import { modesOf, rolesOf } from './known.ts'
import type { MustKnow } from './must-know.ts'

/** The names that a complaint uses. */
export function complaintNames(
  complaint: Complaint,
  knowledge: Knowledge,
  mustKnow: MustKnow,
): void {
  const roles = rolesOf(knowledge)
  const all = { ...complaint.gates, ...complaint.watched }
  const { cautions, groups, checkKinds } = knowledge
  mustKnow(complaint, ['cautions'], 'caution', complaint.cautions, Object.keys(cautions.cautions))
  mustKnow(complaint, ['group'], 'group', [complaint.group], Object.keys(groups.groups))
  complaint.needs.forEach((need, n) => {
    mustKnow(complaint, ['needs', n], 'role', rolesIn(need), roles)
  })
  const checks = [...checkKinds.keys()]
  mustKnow(complaint, ['chart'], 'check', complaint.chart, checks)
  const barred = complaint.bars?.flatMap((each) => [each.until, ...(each.checks ?? [])])
  mustKnow(complaint, ['bars'], 'check', barred, checks)
  mustKnow(complaint, ['top'], 'gate', [complaint.top], Object.keys(complaint.gates))
  const { holds } = complaint.elsewhere
  const perOutput = Object.keys(all).filter((id) => all[id]?.per === 'output')
  mustKnow(complaint, ['elsewhere', 'holds'], 'gate per output', holds ? [holds] : [], perOutput)
  const { home } = knowledge
  const { try: tried, unless = {}, never } = complaint.home
  mustKnow(complaint, ['home', 'try'], 'way home', Object.keys(tried), Object.keys(home.ways))
  mustKnow(complaint, ['home', 'unless'], 'way to try', Object.keys(unless), Object.keys(tried))
  mustKnow(complaint, ['home', 'never'], 'warning', never, Object.keys(home.never))
  for (const [word, ways] of Object.entries({ try: tried, unless })) {
    for (const [way, gates] of Object.entries(ways)) {
      mustKnow(complaint, ['home', word, way], 'gate', gates, Object.keys(all))
    }
  }
  for (const [section, gates] of Object.entries({
    gates: complaint.gates,
    watched: complaint.watched ?? {},
  })) {
    for (const [id, gate] of Object.entries(gates)) {
      gate.needs?.forEach((need, n) => {
        mustKnow(complaint, [section, id, 'needs', n], 'role', rolesIn(need), roles)
      })
      inputsOf(gate).forEach((input, i) => {
        const word = gate.or ? 'or' : gate.and ? 'and' : 'atLeast'
        const path = [section, id, word, ...(word === 'atLeast' ? ['of'] : []), i]
        if ('gate' in input) {
          mustKnow(complaint, path, 'gate', [input.gate], Object.keys(all))
          return
        }
        const target = targetOf(input)
        mustKnow(complaint, path, 'role or gate', [target], [...roles, ...Object.keys(all)])
        const modes = modesOf(knowledge, target)
        const except = 'except' in input ? (input.except ?? []) : []
        const named = [...(input.modes ?? []), ...except]
        mustKnow(complaint, path, `failure mode of ${target}`, named, modes)
      })
    }
  }
}
