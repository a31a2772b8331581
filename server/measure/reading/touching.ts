/**
 * Which way trouble at the probes moves a reading. Contact resistance only ever adds ohms; a weak pull
 * or a bad contact only ever takes volts away.
 */
export type Trouble = 'adds' | 'takes away'

/** How a quantity is touched or pulled, and how several of those come to one reading. */
export interface Touching {
  /** What one of them is called: "touch". */
  readonly one: string
  readonly many: string
  /** What the button says that takes one more: "Touch again". */
  readonly another: string
  /** The same as a sentence, with what to do otherwise than before, where all so far may have been poor. */
  readonly askAgain: string
  /** What it is where the best stands alone, and what to do: ends "… scatter more than the meter can explain: …". */
  readonly scatter: { readonly is: string; readonly remedy: string }
  /** The best one is the lowest where trouble adds, the highest where it takes away. */
  readonly trouble: Trouble
  /** What is taken as read, of those that agree with the best. */
  readonly taken: 'the best' | 'the mean of the best three'
  /** Good ones may lie this share of the reading apart, where the meter alone would not part them. */
  readonly alike: number
  /**
   * What contact puts into the reading, in its unit: a clean touch up to `clean`, a poor one that does
   * conduct up to `poor`. Null where contact is nothing beside what is read.
   */
  readonly contact: { readonly clean: number; readonly poor: number } | null
  /** The leads stay clipped on from one to the next, so that a bad clip spoils all of them alike. */
  readonly clipped: boolean
  /** The test leads are in the reading, and are taken off. */
  readonly leads: boolean
}

const poorContact = { is: 'poor contact', remedy: 'Clean, back-probe, touch again.' }

/**
 * Ohms: contact and leads only ever add. A clean touch with sharp probes adds up to 30 mΩ (from memory;
 * 20 mΩ from pressure and oxide is confirmed as one meter maker's illustration), a poor one that does
 * conduct a few ohms (from memory).
 */
export const contactAdds: Touching = {
  one: 'touch',
  many: 'touches',
  another: 'Touch again',
  askAgain: 'Clean both places, press the probes on bare metal, and touch again.',
  scatter: poorContact,
  trouble: 'adds',
  taken: 'the best',
  alike: 0,
  contact: { clean: 0.03, poor: 5 },
  clipped: false,
  leads: true,
}

/**
 * The same of what is moved while it is read, and where the highest counts: a joint may be what is wrong, and no take
 * that shows it whole clears it. Cleaning it would hide that.
 */
export const asItMoves = (touches: Touching): Touching => ({
  ...touches,
  askAgain: 'Touch again as it is, without cleaning its pins, and move it as before.',
  scatter: {
    is: 'a joint that comes and goes, or poor contact',
    remedy: 'Touch again as it is, and move it.',
  },
})

/** Ohms beside a path that must not be there: contact and leads are nothing beside it. */
export const besideAPath: Touching = { ...contactAdds, contact: null, leads: false }

/** Microfarads: a poor touch takes away and nothing adds. Good ones lie within a fiftieth (from memory). */
export const clippedOn: Touching = {
  ...contactAdds,
  trouble: 'takes away',
  alike: 0.02,
  contact: { clean: 0, poor: 0 },
  clipped: true,
  leads: false,
}

/** Volts of a pull: a weak one takes away, pulls alike differ by a tenth (from memory). */
export const pulls: Touching = {
  one: 'pull',
  many: 'pulls',
  another: 'Another pull',
  askAgain: 'Clip the leads on anew, on bright metal, and pull again.',
  scatter: poorContact,
  trouble: 'takes away',
  // Common practice.
  taken: 'the mean of the best three',
  alike: 0.1,
  contact: { clean: 0, poor: 0 },
  clipped: true,
  leads: false,
}

/** Volts of a running engine come as those of pulls do, and are called readings. */
export const whileItRuns: Touching = {
  ...pulls,
  one: 'reading',
  many: 'readings',
  another: 'Read again',
  askAgain: 'Clip the leads on anew, on bright metal, and read again.',
}

/**
 * Volts that are held, as a battery holds them: bad contact takes away and nothing adds, so the highest
 * stands. Good ones lie within a fiftieth (from memory).
 */
export const held: Touching = { ...whileItRuns, taken: 'the best', alike: 0.02 }

/**
 * Volts lost to a load that is never twice the same (a fifth, from memory): the most that was lost is
 * what counts, and no contact makes it seem more.
 */
export const lost: Touching = { ...held, alike: 0.2, contact: null }

/**
 * Blades of a feeler gauge: dirt on them, or a blade that is not square, takes away from the gap that seems to be
 * there. Force alone adds to it, and the steps of a check forbid that.
 */
export const blades: Touching = {
  one: 'try',
  many: 'tries',
  another: 'Try again',
  askAgain: 'Wipe blades and faces, and try again, square and without force.',
  scatter: {
    is: 'dirt, or a blade that was not square',
    remedy: 'Wipe blades and faces, and try again without force.',
  },
  trouble: 'takes away',
  taken: 'the best',
  alike: 0,
  contact: null,
  clipped: false,
  leads: false,
}

/**
 * The crankshaft turned slowly up to something: play on the way makes it seem late, never early. Turns lie within a
 * twentieth (from memory).
 */
export const turns: Touching = {
  ...blades,
  one: 'turn',
  many: 'turns',
  another: 'Turn once more',
  askAgain: 'Find the top again, and turn it once more the way the engine runs.',
  scatter: {
    is: 'play, or a top that was not found',
    remedy: 'Find the top again, and turn once more.',
  },
  alike: 0.05,
}
