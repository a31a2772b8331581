import type {
  CheckView,
  MeterKey,
  ReadingForm,
  SpotView,
  StepsView,
  WireView,
} from '../jobs/check/view.ts'
import type { BudgetView } from '../jobs/readings/view.ts'
import type { CautionsView } from '../jobs/words/cautions/cautions.ts'

/** View models of the pages of a machine's sheet. */

/** A field with what was typed into it. */
export interface Field {
  readonly value: string
  readonly problem?: string
}

/** What the readings are seen under: typed once, and kept in every address of the sheet. */
export interface CircumstancesView {
  /** "Meter, leads and the air"; empty where nothing is asked. */
  readonly says: string
  readonly isWrong: boolean
  /** What was given and has no field here. */
  readonly kept: readonly { readonly name: string; readonly value: string }[]
  readonly air?: Field & { readonly placeholder: string; readonly hint: string }
  readonly zero?: Field
  readonly meter?: {
    readonly choices: readonly {
      readonly value: string
      readonly says: string
      readonly chosen: boolean
    }[]
    readonly problem?: string
  }
}

/** All limits of a machine, plug by plug. */
export interface SheetPage {
  readonly title: string
  readonly machine: string
  readonly about: string
  readonly action: string
  readonly find: string
  /** "136 readings", "4 of 136 readings" */
  readonly says: string
  readonly all?: { readonly href: string; readonly text: string }
  readonly circumstances: CircumstancesView
  /** "Limits as a meter shows them at −10 °C, where the part follows the temperature." */
  readonly nowSays?: string
  readonly plugs: readonly PlugView[]
  /** Those of all its readings. */
  readonly cautions: CautionsView
  /** The maker's manual is among them, and needs no word at the foot. */
  readonly notices: true
  /** At what temperature limits hold that name none. */
  readonly basis: string
  /** On paper, in place of a line for every wire: what a good one shows, a sentence each. */
  readonly wires: readonly string[]
  readonly complaints: { readonly href: string; readonly text: string }
  readonly checkOver: { readonly href: string; readonly text: string }
  readonly cards: { readonly href: string; readonly text: string }
}

/** One connector with what is read at it; or what is read elsewhere. */
export interface PlugView {
  readonly id: string
  readonly name: string
  readonly where: string
  readonly awkward: boolean
  /** The face with every pin, ready to print, and which half is drawn. */
  readonly face?: { readonly svg: string; readonly view: string }
  readonly pins: readonly {
    readonly pin: string
    readonly to: string
    readonly wire: WireView
  }[]
  /** Readings that stand together because the machine is the same for them. */
  readonly groups: readonly { readonly title: string; readonly rows: readonly RowView[] }[]
  /** Those of the wires and plugs on the way: folded away, since what is on the way is asked for last. */
  readonly onTheWay: {
    readonly title: string
    readonly open: boolean
    readonly rows: readonly RowView[]
  }
}

/** One reading of the sheet. */
export interface RowView {
  readonly href: string
  readonly part: string
  /** "Resistance from end to end" */
  readonly says: string
  /** "pins 1 and 2" */
  readonly between: string
  /** The same as short as paper has room for: "1, 2"; empty where it is no pin. */
  readonly pins: string
  /** "ohms", "DC volts" */
  readonly setting: string
  /** Its limits say by their unit what the meter is set to. */
  readonly isOhms: boolean
  /** "310 Ω to 420 Ω" */
  readonly limits: string
  /** "at 20 °C", "at 400 rpm", or empty. */
  readonly at: string
  /** "273 Ω to 370 Ω" as it shows now; left out where it is the same. */
  readonly now?: string
  readonly source: string
}

/** One reading of the sheet: where and how to take it, and what it is worth. */
export interface ReadingPage {
  readonly title: string
  readonly machine: string
  /** The maker's manual is named among the cautions, and needs no word at the foot. */
  readonly notices: true
  readonly back: { readonly href: string; readonly text: string }
  readonly heading: string
  readonly cautions: CautionsView
  readonly spot: SpotView
  readonly limits: NonNullable<CheckView['limits']>
  readonly setting?: string
  /** What this meter cannot tell here. */
  readonly unfit?: string
  readonly steps: readonly StepsView[]
  /** Where the form is sent to: the page itself. */
  readonly action: string
  readonly form: SheetForm
  readonly circumstances: CircumstancesView
  readonly result?: ResultView
}

/** The form of one reading: nothing that it sends is kept. */
export interface SheetForm
  extends Pick<ReadingForm, 'label' | 'hint' | 'typed' | 'warmth' | 'rpm'> {
  readonly unit: string
  readonly over?: string
  readonly keys: readonly MeterKey[]
  readonly problem?: string
}

/** What one reading is worth. */
export interface ResultView {
  /** "Start exciter winding read 430 Ω, lowest of 2 touches." */
  readonly says: string
  /** "Good", "Bad: high", "Not sure: perhaps low, 61 %"; empty where nothing was read. */
  readonly word: string
  /** Where it looks like a mistake of the hand. */
  readonly mistake?: string
  readonly corrected: readonly string[]
  readonly notes: readonly string[]
  readonly scale?: string
  readonly sure: string
  readonly budget?: BudgetView
  readonly meaning?: MeaningView
  /** What it does not clear, of a good one; sentences. */
  readonly notShown: readonly string[]
  /** Other readings of this sheet that would tell most next. */
  readonly settles: readonly { readonly href: string; readonly text: string }[]
  /** Open a job that begins with it. */
  readonly opens: readonly { readonly href: string; readonly text: string }[]
}

/** What a reading may mean, the likeliest first. */
export interface MeaningView {
  readonly rows: readonly {
    readonly says: string
    readonly chance: string
  }[]
  /** "Left out: 4 less likely failures, 3 % together.", or empty. */
  readonly rest: string
}
