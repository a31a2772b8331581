import type { Outline, Stage } from '../../diagnosis/outline/outline.ts'
import { proofClause } from '../../jobs/verdict/proof.ts'
import { byGravity, cautionsEverywhere, gravity } from '../../jobs/words/cautions/cautions.ts'
import { degrees, sentence } from '../../jobs/words/sentences.ts'
import type { CautionCard } from '../../knowledge/case.ts'
import { cautionCards } from '../../knowledge/instantiate/caution-cards.ts'
import { machineName } from '../../knowledge/machine-name.ts'
import { assumedForLimits } from '../../measure/correct/temperature.ts'
import type { CardView, CautionPanel } from '../card.ts'
import { isOwner } from '../drawing/tools.ts'
import type { Wording } from './check-words.ts'
import { partsToRepair } from './ending-words.ts'
import { homeView } from './home.ts'
import { lettersIn } from './letters.ts'
import { numbersOf } from './numbers.ts'
import { paperView } from './paper.ts'
import { reachWords } from './reach.ts'
import { repairsApart } from './repairs-apart.ts'
import { stageViews } from './stages.ts'

/** A card in words. The same outline of the same knowledge gives the same card. */
export function presentCard(wording: Wording, outline: Outline): CardView {
  const { kase, tools } = wording
  const numbers = numbersOf(outline.first)
  const first = stageViews(wording, outline, numbers)
  const cautions = cautionPanels(wording, cautionsOn(wording, numbers.checks.keys(), outline.first))
  const head = {
    id: kase.complaint.id,
    machine: machineName(kase.machine),
    complaint: kase.complaint.title,
    owner: sentence(kase.complaint.owner),
    tools: tools.name,
    cautions,
    reach: reachWords(kase, outline),
    home: homeView(wording, outline.start, cautions),
    back: [
      `Proof of any repair: ${proofClause(kase.complaint.prove)}`,
      'Before a repair is tried: every plug, cap and cover back on, every tester, rag and spare plug out, the fuel tap open.',
      ...(kase.machine.stop ? [sentence(kase.machine.stop.try)] : []),
    ],
    notes: [
      `Limits of windings hold at ${degrees(assumedForLimits.celsius)} where nothing else stands beside them; copper reads less in the cold.`,
      'Take off what the meter shows with its probes held together. Before a reading condemns a part, touch again.',
    ],
  }
  return {
    ...head,
    ...repairsApart(first),
    paper: paperView({
      wording,
      first,
      numbers,
      cautions: head.cautions,
      besides: lettersIn(head),
    }),
  }
}

/** Those of all checks and repairs on the card, and of the place. */
function cautionsOn(
  { knowledge, kase, tools }: Wording,
  checks: Iterable<string>,
  first: Stage,
): CautionCard[] {
  const here = Object.entries(knowledge.cautions.cautions)
    .filter(
      ([, { place, afloat }]) =>
        place === tools.conditions.where && (!afloat || kase.machine.afloat),
    )
    .map(([id]) => id)
  return [
    ...[...checks].flatMap((check) => kase.checks.get(check)?.cautions ?? []),
    ...partsToRepair(first).flatMap((part) => kase.parts.get(part)?.cautions ?? []),
    ...cautionCards(here, knowledge, kase.machine),
    ...cautionsEverywhere({ knowledge }),
  ]
}

function cautionPanels({ tools }: Wording, cards: readonly CautionCard[]): CautionPanel[] {
  const all = byGravity(cards).map((card, i) => ({ card, number: String(i + 1) }))
  return gravity
    .map((signal) => ({
      signal,
      cautions: all
        .filter(({ card }) => card.signal === signal)
        .map(({ card: { id, command, says, phone }, number }) => ({
          id,
          number,
          command,
          says: isOwner(tools) ? phone : says,
        })),
    }))
    .filter(({ cautions }) => cautions.length > 0)
}
