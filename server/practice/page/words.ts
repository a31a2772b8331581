import { listed, lowerFirst, minutes, sentence } from '../../jobs/words/sentences.ts'
import type { Case, CheckCard, SetupCard } from '../../knowledge/case.ts'
import { unplugId } from '../../knowledge/instantiate/setup-cards.ts'
import { sentencesIn } from '../../knowledge/instantiate/words.ts'
import type { Made } from '../round/standing.ts'
import type { Seen } from '../seen/look.ts'

/** What came back, as the meter shows it or in words: "365.2 Ω", "4.71 kΩ", "OL", "No spark". */
export function seenWords({ answers, measurand }: CheckCard, seen: Seen): string {
  if (seen.kind === 'barred') return 'It cannot be done as the machine stands'
  if (seen.kind === 'answer') return answers?.find(({ id }) => id === seen.id)?.says ?? seen.id
  return seen.text
    .split(' ')
    .map((text) => withUnit(text, measurand))
    .join(', ')
}

function withUnit(text: string, measurand: CheckCard['measurand']): string {
  const [, figure, prefix = ''] = /^([\d.]+)([kM]?)$/.exec(text) ?? []
  if (figure === undefined || measurand === undefined) return text
  return `${figure}\u00a0${prefix}${measurand.quantity.unit}`
}

/** "Plug look: dry", "Did it die hot? No": a check and what came back. */
export const titled = (title: string, shown: string): string =>
  title.endsWith('?') ? `${title} ${shown}` : `${title}: ${shown}`

/** How it is put back, or what was done where nothing is written of that. */
export const backWords = ({ undo, do: says }: SetupCard): string => sentence(undo?.do ?? says)

/** The way back of several, each by what comes first of it: what the switches stand at is said elsewhere. */
export function backsInShort({ machine: { stop } }: Case, setups: readonly SetupCard[]): string {
  const first = (setup: SetupCard): string => {
    const all = sentencesIn(backWords(setup))
    const says = all.find((each) => each !== sentence(stop?.off ?? '')) ?? ''
    return lowerFirst(says.replace(/\.$/, ''))
  }
  return sentence(setups.map(first).join('; '))
}

/** "14 min", "14 min, 5 min of it waiting". */
export const spentWords = (spent: number, waited: number): string =>
  waited === 0 ? minutes(spent) : `${minutes(spent)}, ${minutes(waited)} of it waiting`

/** "read with the coil plug still apart": what was left in the way of a check and spoilt it; empty where nothing was. */
export function leftWords({ machine }: Case, { seen, spoilt, inTheWay }: Made): string {
  if (!spoilt || seen.kind === 'barred') return ''
  const plugs = Object.entries(machine.connectors)
    .filter(([plug]) => inTheWay.some(({ id }) => id === unplugId(plug)))
    .map(([, { name }]) => `the ${name}`)
  return `with ${listed(plugs)} still apart`
}

/** Fields that the page of a job has and the bench has not, as the steps of checks speak of them. */
const fieldsOfAJob: readonly (readonly [RegExp, string])[] = [
  [
    /enter what they read under Meter and leads(: it is taken off for you)?/g,
    'note what they read',
  ],
  [/[;.] zeroed leads are taken off for you/gi, ', with the leads in it'],
]

/** A step as it is done at the bench, where the reading shows by itself. */
export const atTheBench = (text: string): string =>
  fieldsOfAJob.reduce((said, [field, instead]) => said.replace(field, instead), text)
