import { entry } from '../../../diagnosis/model/named.ts'
import type { Knowledge } from '../../knowledge.ts'
import type { CheckKind } from '../../schema/index.ts'
import type { Proof } from '../../schema/proof.ts'
import { quantityOf } from '../checks-rule.ts'
import type { Report } from '../report.ts'

/**
 * Whatever tells people to do something carries every caution that it asks for: checks by their engine, tools,
 * set-ups and quantity, proofs and ways home by what the engine does, and all of them, repairs too, by their words.
 */
export function cautionsRule(knowledge: Knowledge, report: Report): void {
  const { cautions } = knowledge
  for (const { entry, carries, asked } of instructions(knowledge)) {
    for (const [id, caution] of Object.entries(cautions.cautions)) {
      if (carries.includes(id)) continue
      const why = asked.map((asking) => whyNeeded(caution, asking)).find((each) => each !== null)
      if (why === undefined) continue
      const { file, line } = report.locate(cautions, ['cautions', id, why.field])
      report.add(entry, why.at, `add ${id}: ${file}:${line} asks for it ${why.because}`)
    }
  }
}

/** Something that is told to do, with the cautions that stand before it. */
interface Instruction {
  readonly entry: object
  readonly carries: readonly string[]
  readonly asked: readonly Asking[]
}

/** What may ask for a caution: the kind of doing, and its words. */
interface Asking {
  /** Where a problem is shown. */
  readonly at: readonly PropertyKey[]
  readonly kind?: Partial<Readonly<Record<Condition, readonly string[]>>>
  readonly texts: readonly { readonly name: string; readonly says: string }[]
}

type Condition = 'engine' | 'tools' | 'setups' | 'quantity'
type Caution = Knowledge['cautions']['cautions'][string]

function instructions(knowledge: Knowledge): Instruction[] {
  return [
    ...[...knowledge.checkKinds.values()].map((check) => ({
      entry: check,
      carries: check.cautions,
      asked: [ofCheck(check, knowledge)],
    })),
    ...[...knowledge.checkKinds.values()].flatMap((check) =>
      (check.answers ?? []).flatMap(({ mend }, a) =>
        mend === undefined
          ? []
          : {
              entry: check,
              carries: [...check.cautions, ...(mend.cautions ?? [])],
              asked: [
                {
                  at: ['answers', a, 'mend'],
                  texts: [
                    { name: 'do', says: mend.do },
                    { name: 'phone', says: mend.phone ?? '' },
                  ],
                },
              ],
            },
      ),
    ),
    ...[...knowledge.partKinds.values()].map((part) => ({
      entry: part,
      carries: part.cautions ?? [],
      asked: [
        { at: ['repair'], texts: [{ name: 'repair', says: part.repair }] },
        ...ofProof(part.prove),
      ],
    })),
    ...[...knowledge.partKinds.values()].flatMap((part) =>
      part.modes.flatMap(({ mend }, m) =>
        mend === undefined
          ? []
          : {
              entry: part,
              carries: mend.cautions,
              asked: [{ at: ['modes', m, 'mend'], texts: [{ name: 'phone', says: mend.phone }] }],
            },
      ),
    ),
    ...waysOf(knowledge),
    ...[...knowledge.complaints.values()].map((complaint) => ({
      entry: complaint,
      carries: complaint.cautions ?? [],
      asked: ofProof(complaint.prove),
    })),
  ]
}

/** The ways to get home, by their words, and by what the engine does: one that turns it has it run. */
const waysOf = ({ home }: Knowledge): Instruction[] =>
  Object.entries(home.ways).map(([id, { cautions, do: steps, leaves = [] }]) => ({
    entry: home,
    carries: cautions,
    asked: [
      {
        at: ['ways', id, 'cautions'],
        kind: {
          engine: steps.some((says) => says.includes('{turn}')) ? ['cranking', 'running'] : [],
          setups: leaves,
        },
        texts: steps.map((says) => ({ name: 'do', says })),
      },
    ],
  }))

/** Where somebody is only asked, nobody does what the words tell of. */
function ofCheck(check: CheckKind, knowledge: Knowledge): Asking {
  const quantity = quantityOf(knowledge, check)
  const setups = (check.setups ?? []).map((id) => ({
    name: `set-up ${id}`,
    says: entry(knowledge.setups.setups, id).do,
  }))
  return {
    at: ['cautions'],
    kind: {
      engine: [check.engine],
      tools: check.tools,
      setups: check.setups ?? [],
      quantity: quantity === undefined ? [] : [quantity],
    },
    texts: check.asked ? [] : [...check.do.map((says) => ({ name: 'do', says })), ...setups],
  }
}

function ofProof({ sees: _, ...proof }: Proof): Asking[] {
  return Object.entries(proof).map(([engine, says]) => ({
    at: ['prove', engine],
    kind: { engine: [engine] },
    texts: [{ name: `prove, ${engine},`, says }],
  }))
}

function whyNeeded({ neededWhen, words }: Caution, { at, kind, texts }: Asking) {
  const because = kind && neededWhen && whyOfKind(neededWhen, kind)
  if (because) return { at, field: 'neededWhen', because }
  for (const word of words ?? []) {
    const text = texts.find(({ says }) => saysWord(says, word))
    if (text) return { at, field: 'words', because: `where ${text.name} says "${word}"` }
  }
  return null
}

/** What in the kind of doing asks for the caution; null unless every condition that is given is met. */
function whyOfKind(
  neededWhen: NonNullable<Caution['neededWhen']>,
  kind: NonNullable<Asking['kind']>,
): string | null {
  const conditions = [
    { says: 'engine is', wanted: neededWhen.engine, has: kind.engine },
    { says: 'tools has', wanted: neededWhen.tools, has: kind.tools },
    { says: 'setups has', wanted: neededWhen.setups, has: kind.setups },
    { says: 'it measures', wanted: neededWhen.quantity, has: kind.quantity },
  ]
  const met = conditions.flatMap(({ says, wanted, has = [] }) =>
    wanted === undefined
      ? []
      : { says, names: has.filter((name) => wanted.some((w) => w === name)) },
  )
  if (met.some(({ names }) => names.length === 0)) return null
  if (met.length === 0) return 'in every check'
  return `where ${met.map(({ says, names }) => `${says} ${names.join(', ')}`).join(' and ')}`
}

/** Whether a text holds these words, whole, whatever their case and wherever its lines break. */
function saysWord(text: string, words: string): boolean {
  const pattern = patterns.get(words) ?? patternOf(words)
  patterns.set(words, pattern)
  return pattern.test(text)
}

const patterns = new Map<string, RegExp>()

function patternOf(words: string): RegExp {
  const literal = words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+')
  return new RegExp(`(?<!\\p{L})${literal}(?!\\p{L})`, 'iu')
}
