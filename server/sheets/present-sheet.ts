import { connectorFace } from '../drawings/connector-face.ts'
import { wireView } from '../jobs/check/spot.ts'
import { cautionsEverywhere, cautionsView } from '../jobs/words/cautions/cautions.ts'
import { limitsNow } from '../jobs/words/limits-now.ts'
import { degrees, listed, sentence, the, upperFirst } from '../jobs/words/sentences.ts'
import type { Knowledge } from '../knowledge/knowledge.ts'
import { machineName } from '../knowledge/machine-name.ts'
import type { Connector } from '../knowledge/schema/machine.ts'
import type { DrawnSheet, SheetReading } from '../knowledge/sheet/sheet.ts'
import { assumedForLimits } from '../measure/correct/temperature.ts'
import { printLimits } from '../measure/reading/print.ts'
import { plainWords, slips } from '../web/typed/spelling.ts'
import { counted } from '../web/words.ts'
import { type AtHand, airWords } from './at-hand.ts'
import { presentCircumstances } from './circumstances.ts'
import { sheetHref } from './hrefs.ts'
import { grouped, rowOf } from './rows.ts'
import type { PlugView, SheetPage } from './views.ts'

/** A machine's sheet: every plug with what is read at it, or the readings that somebody looks for. */
export function presentSheet(knowledge: Knowledge, sheet: DrawnSheet, hand: AtHand): SheetPage {
  const { machine, readings } = sheet
  const { find } = hand.typed
  const found = [...readings.values()].filter((reading) => isMeant(sheet, reading, find))
  const isAll = found.length === readings.size
  const followsNow = found.some(
    ({ card }) => limitsNow(card.measurand, hand.conditions.air) !== undefined,
  )
  const name = machineName(machine)
  return {
    title: `Limits of the ${name}`,
    machine: name,
    about: machine.about,
    action: sheetHref(machine.id, { ...hand, typed: { air: '', meter: '', zero: '', find: '' } }),
    find,
    says: foundWords(found.length, readings.size, find),
    ...(!isAll && { all: { href: sheetHref(machine.id, hand), text: 'All readings' } }),
    circumstances: presentCircumstances(knowledge, hand),
    ...(followsNow && {
      nowSays: `“Now” is what a good one shows at ${airWords(hand)}: copper follows the temperature.`,
    }),
    plugs: plugsOf(knowledge, sheet, found, hand, isAll),
    cautions: {
      ...cautionsView([
        ...found.flatMap(({ card }) => card.cautions),
        ...cautionsEverywhere({ knowledge }),
      ]),
      inFull: [],
    },
    notices: true,
    basis: `Limits of windings hold at ${degrees(assumedForLimits.celsius)} where nothing else stands beside them.`,
    wires: wiresOf(sheet, found),
    checkOver: {
      href: `/machines/${encodeURIComponent(machine.id)}/check-over`,
      text: 'Check it over, part by part',
    },
    cards: {
      href: `/machines/${encodeURIComponent(machine.id)}/cards`,
      text: 'Pocket cards, for where there is no network',
    },
    complaints: {
      href: `/?${new URLSearchParams({ machine: machine.id })}`,
      text: 'Start from a complaint',
    },
  }
}

function foundWords(found: number, all: number, find: string): string {
  if (found === 0) {
    return `No reading of this machine is called “${find}”. Try fewer letters: a part, a plug or a quantity.`
  }
  return found === all ? counted(all, 'reading') : `${found} of ${counted(all, 'reading')}`
}

/** Each word typed begins some word of what the line says, give or take a slip of the finger. */
function isMeant({ parts }: DrawnSheet, { card, says }: SheetReading, find: string): boolean {
  const own = plainWords(
    `${parts.get(card.part)?.name ?? ''} ${says} ${card.spot.says} ${card.title}`,
  )
  return plainWords(find).every((word) => own.some((each) => slips(word, each) !== null))
}

/** In the order of the sheet; what is read at no connector comes last. */
function plugsOf(
  knowledge: Knowledge,
  sheet: DrawnSheet,
  found: readonly SheetReading[],
  hand: AtHand,
  withEmpty: boolean,
): PlugView[] {
  const { machine, parts } = sheet
  const rowFor = (reading: SheetReading) =>
    rowOf(machine, reading, parts.get(reading.card.part)?.name ?? reading.card.part, hand)
  const at = (connector: string | undefined) =>
    found.filter(({ card }) => card.spot.connector?.id === connector)
  const rowsOf = (readings: readonly SheetReading[]) => {
    const way = readings.filter(({ onTheWay }) => onTheWay)
    const own = readings.filter(({ onTheWay }) => !onTheWay)
    const title = `Wires on the way, ${counted(way.length, 'reading')}`
    return {
      groups: grouped(own, rowFor),
      // Whoever looks for something wants to see it.
      onTheWay: { title, open: !withEmpty, rows: way.map(rowFor) },
    }
  }
  const plugs = Object.entries(machine.connectors)
    .map(([id, card]) => ({ ...plugView(knowledge, id, card), readings: at(id) }))
    .filter(({ readings }) => withEmpty || readings.length > 0)
    .map(({ readings, ...plug }) => ({ ...plug, ...rowsOf(readings) }))
  const elsewhere = at(undefined)
  if (elsewhere.length === 0) return plugs
  const own = { id: 'elsewhere', name: 'Read at the parts themselves', where: '', awkward: false }
  return [...plugs, { ...own, pins: [], ...rowsOf(elsewhere) }]
}

/** "Resistance from one end to the other of each wire: at most 0.5 Ω." */
function wiresOf({ parts }: DrawnSheet, found: readonly SheetReading[]): string[] {
  const byWords = new Map<string, Map<string, string[]>>()
  for (const { card, says } of found.filter(({ onTheWay }) => onTheWay)) {
    const within = printLimits(card.measurand.limits, card.measurand.quantity.unit)
    const limits = byWords.get(says) ?? new Map<string, string[]>()
    limits.set(within, [...(limits.get(within) ?? []), parts.get(card.part)?.name ?? card.part])
    byWords.set(says, limits)
  }
  return [...byWords].flatMap(([says, limits]) => {
    const most = Math.max(...[...limits.values()].map(({ length }) => length))
    return [...limits].map(([within, names]) =>
      // What holds for most needs no names.
      names.length === most
        ? `${upperFirst(says)}: ${within}.`
        : `${upperFirst(says)}, ${listed(names.map(the))}: ${within}.`,
    )
  })
}

function plugView(
  { colours }: Knowledge,
  id: string,
  { name, where, awkward = false, face, pins }: Connector,
): Omit<PlugView, 'groups' | 'onTheWay'> {
  const wires = Object.entries(pins).map(([pin, { wire, to }]) => ({
    pin,
    to,
    wire: wireView(wire, colours),
  }))
  return {
    id,
    name: upperFirst(name),
    where: sentence(where),
    awkward,
    face: {
      view: upperFirst(face.view),
      svg: connectorFace({
        ...face,
        touch: [],
        label: `${upperFirst(name)}, ${face.view}`,
        pins: Object.fromEntries(wires.map(({ pin, wire }) => [pin, wire])),
      }),
    },
    pins: wires,
  }
}
