/** Something a person set or started wrongly. The message is one sentence for them. */
export class SetupProblem extends Error {}
