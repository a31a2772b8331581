/** Whoever has no tool for a check has not begun it, unless they had heard some of it when they said so. */
export const noToolHere = 'No tool for it here'

/** What stands in the way of a check, as people would put it. */
export const skipReasons = [
  'Cannot get at it',
  noToolHere,
  'Not safe here',
  'Takes too long now',
] as const
