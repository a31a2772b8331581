import { type ByAbout, byAbout } from '../../by-about.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { CheckKind } from '../../schema/index.ts'
import { gatesOf, otherLooks, propertiesOf, rolesOf } from './known.ts'
import { listOf, type MustKnow } from './must-know.ts'

/** The names that a check uses. */
export function checkNames(check: CheckKind, knowledge: Knowledge, mustKnow: MustKnow): void {
  const roles = rolesOf(knowledge)
  const setups = Object.keys(knowledge.setups.setups)
  const { place } = check
  const cautions = Object.keys(knowledge.cautions.cautions)
  const opened = Object.keys(knowledge.home.halfOpen)
  mustKnow(check, ['cautions'], 'caution', check.cautions, cautions)
  const looks = listOf(check.looksAt)
  mustKnow(
    check,
    ['looksAt'],
    'thing that another check looks at',
    looks,
    otherLooks(knowledge, check),
  )
  mustKnow(check, ['tools'], 'tool', check.tools, Object.keys(knowledge.tools.tools))
  mustKnow(check, ['setups'], 'set-up', check.setups, setups)
  mustKnow(check, ['forbids'], 'set-up', check.forbids, setups)
  mustKnow(check, ['place', 'role'], 'role', listOf(place?.role), roles)
  const property = listOf(place?.property)
  mustKnow(check, ['place', 'property'], 'property', property, propertiesOf(knowledge))
  const needs = typeof check.owner === 'string' ? undefined : check.owner.needs
  const kit = Object.keys(knowledge.owner.kit)
  mustKnow(check, ['owner', 'needs'], 'thing in the kit', needs, kit)
  check.answers?.forEach(({ mend, renews, inVain }, a) => {
    mustKnow(check, ['answers', a, 'mend', 'kit'], 'thing in the kit', mend?.kit, kit)
    mustKnow(check, ['answers', a, 'mend', 'roles'], 'role', mend?.roles, roles)
    mustKnow(check, ['answers', a, 'mend', 'undoes'], 'set-up', mend?.undoes, setups)
    mustKnow(check, ['answers', a, 'mend', 'opens'], 'thing that is opened', mend?.opens, opened)
    mustKnow(check, ['answers', a, 'mend', 'stays'], 'thing that is opened', mend?.stays, opened)
    mustKnow(check, ['answers', a, 'mend', 'cautions'], 'caution', mend?.cautions, cautions)
    mustKnow(check, ['answers', a, 'renews'], 'caution', renews, cautions)
    mustKnow(check, ['answers', a, 'inVain'], 'way home', inVain, Object.keys(knowledge.home.ways))
  })
  byAbout(aboutNames, check.about, check, knowledge, mustKnow)
}

const aboutNames: ByAbout<[entry: object, knowledge: Knowledge, mustKnow: MustKnow], void> = {
  property: (about, entry, knowledge, mustKnow) => {
    const path = ['about', 'property']
    mustKnow(entry, path, 'property', [about.property], propertiesOf(knowledge))
    mustKnow(entry, ['about', 'roles'], 'role', about.roles, rolesOf(knowledge))
    mustKnow(entry, ['about', 'within'], 'gate', about.within, gatesOf(knowledge))
  },
  gate: (about, entry, knowledge, mustKnow) => {
    const gates = gatesOf(knowledge)
    const roles = rolesOf(knowledge)
    mustKnow(entry, ['about', 'gate'], 'gate', [about.gate], gates)
    mustKnow(entry, ['about', 'without'], 'gate', listOf(about.without), gates)
    mustKnow(entry, ['about', 'replacing'], 'role', listOf(about.replacing), roles)
    mustKnow(entry, ['about', 'swapping'], 'role', listOf(about.swapping), roles)
    mustKnow(entry, ['about', 'shows'], 'property', listOf(about.shows), propertiesOf(knowledge))
    mustKnow(entry, ['about', 'roles'], 'role', about.roles, roles)
    const { measured } = about
    if (measured === undefined) return
    mustKnow(entry, ['about', 'measured', 'role'], 'role', [measured.role], roles)
    const path = ['about', 'measured', 'property']
    mustKnow(entry, path, 'property', [measured.property], propertiesOf(knowledge))
  },
  which: (about, entry, knowledge, mustKnow) => {
    mustKnow(entry, ['about', 'gate'], 'gate', [about.gate], gatesOf(knowledge))
  },
  question: (about, entry, knowledge, mustKnow) => {
    mustKnow(entry, ['about', 'within'], 'gate', about.within, gatesOf(knowledge))
    about.when.forEach(({ gate }, i) => {
      mustKnow(entry, ['about', 'when', i, 'gate'], 'gate', [gate], gatesOf(knowledge))
    })
  },
}
