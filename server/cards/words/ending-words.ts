import { named } from '../../diagnosis/model/named.ts'
import type { Suspect } from '../../diagnosis/model/walk.ts'
import type { Ending, Stage } from '../../diagnosis/outline/outline.ts'
import { partNames, suspectName } from '../../jobs/words/names.ts'
import {
  counted,
  listed,
  lowerFirst,
  percent,
  sentence,
  the,
  upperFirst,
} from '../../jobs/words/sentences.ts'
import type { Case } from '../../knowledge/case.ts'
import type { Proof } from '../../knowledge/schema/proof.ts'
import type { EndingView } from '../card.ts'
import { heedOf, type Wording } from './check-words.ts'

/** Parts whose repair some ending says. */
export function partsToRepair(stage: Stage): readonly string[] {
  if (stage.kind === 'split') return stage.answers.flatMap(({ next }) => partsToRepair(next))
  return repaired(stage)
}

/** What is named, or of a group what is likeliest. */
function repaired({ end, suspects }: Ending): readonly string[] {
  if (end.kind === 'named') return end.parts
  if (end.kind !== 'cannotSeparate') return []
  const group = new Set(end.group.map(({ part }) => part))
  return suspects
    .flatMap(({ part }) => (part !== null && group.has(part) ? [part] : []))
    .slice(0, 1)
}

type Words = Pick<EndingView, 'title' | 'says' | RepairWords>
type RepairWords = 'heed' | 'repaired' | 'where' | 'repair' | 'proof'

/** So many suspects of a group are named one by one. */
const mostNamed = 5

/** What an ending says: the part, the group and what would tell it apart, or that it is something else. */
export function endingWords({ kase }: Wording, ending: Ending): Words {
  const { end, after } = ending
  switch (end.kind) {
    case 'named': {
      const title = `${upperFirst(partNames(kase, end.parts))}, ${percent(after)}`
      return { title, says: failures(kase, ending), ...repairOf(kase, repaired(ending)) }
    }
    case 'cannotSeparate': {
      const group = new Set(end.group.map(({ part }) => part))
      const suspects = ending.suspects.filter(({ part }) => group.has(part))
      const [first] = repaired(ending)
      return {
        title: `Not told apart: ${groupWords(kase, suspects)}`,
        says: [
          toldApartBy(kase, end.splitBy),
          ...(first === undefined
            ? []
            : [`If a part must be chosen now, begin with ${the(named(kase.parts, first).name)}.`]),
        ],
        ...repairOf(kase, repaired(ending)),
      }
    }
    case 'outsideThisTree':
      return {
        title: `None of the causes on this card, ${percent(after)}`,
        says: [sentence(kase.complaint.elsewhere.says)],
        ...nothingToRepair,
      }
    case 'contradiction':
      return {
        title: 'These answers do not fit together',
        says: ['Make the last checks again. The same? Open a job, or ring the workshop.'],
        ...nothingToRepair,
      }
  }
}

const nothingToRepair = { heed: [], repaired: '', where: '', repair: '', proof: '' }

/** "It is open somewhere in the winding." of what was followed to here, the likeliest first. */
function failures({ model, faults }: Case, { explanations }: Ending): string[] {
  const cards = explanations
    .flatMap((explanation) => model.cutSets[explanation]?.faults ?? [])
    .map((fault) => named(faults, fault))
  const [first] = cards
  if (first === undefined) return []
  const said = listed([...new Set(cards.map(({ says }) => says))], 'or')
  return [sentence(upperFirst(`${first.pronoun} ${said}`))]
}

function groupWords(kase: Case, suspects: readonly Suspect[]): string {
  const worth = suspects.filter(({ probability }) => probability >= 0.01).slice(0, mostNamed)
  const shown = worth.length > 0 ? worth : suspects.slice(0, 1)
  const rest = suspects.slice(shown.length)
  const names = shown.map(({ part, probability }) => {
    const name = suspectName(kase, part)
    return `${part === null ? name : the(name)} (${percent(probability)})`
  })
  if (rest.length === 0) return listed(names, 'or')
  const left = rest.reduce((sum, { probability }) => sum + probability, 0)
  return listed([...names, `one of ${counted(rest.length, 'other')} (${percent(left)})`], 'or')
}

function toldApartBy({ checks }: Case, check: string | undefined): string {
  const card = check === undefined ? undefined : checks.get(check)
  if (card === undefined) return 'Known good parts, put in one at a time, would tell.'
  const tools = listed(card.tools.map(({ name }) => lowerFirst(name)))
  const needs = tools === '' ? '' : `; it needs: ${tools}`
  return sentence(`This would tell: ${lowerFirst(card.title)}${needs}`)
}

function repairOf(kase: Case, names: readonly string[]): Pick<Words, RepairWords> {
  const cards = names.map((name) => named(kase.parts, name))
  return {
    repaired: upperFirst(partNames(kase, names)),
    heed: heedOf(cards.flatMap(({ cautions }) => cautions)),
    where: cards.flatMap(({ where }) => (where ? [sentence(where)] : [])).join(' '),
    repair: cards.map(({ repair }) => sentence(repair)).join(' '),
    proof: cards.map(({ prove }) => ownProof(prove)).join(' '),
  }
}

/** What proves the part itself, with the engine as quiet as can be; the complaint's own proof stands once for all. */
const ownProof = ({ stopped, cranking, running }: Proof): string =>
  stopped ?? cranking ?? running ?? ''
