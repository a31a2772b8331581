/** A sentence that says what to do next, and the way to it where there is one. */
export interface NextStep {
  readonly says: string
  readonly way?: { readonly href: string; readonly text: string }
}
