/** A label and what is written beside it, as in "Machine: …". */
export interface Fact {
  readonly label: string
  readonly value: string
  /** Where it can be changed. */
  readonly way?: { readonly href: string; readonly text: string }
}
