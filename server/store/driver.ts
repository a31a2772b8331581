/** The driver is not there, or its binary is one for another machine. The cause says which. */
export class DriverMissing extends Error {}

/**
 * Loads the database driver. A plain import at the top of a file could not be caught, and would reach
 * people as a stack.
 */
export async function loadDriver(): Promise<typeof import('@photostructure/sqlite')> {
  try {
    return await import('@photostructure/sqlite')
  } catch (cause) {
    throw new DriverMissing('The database driver cannot be loaded', { cause })
  }
}
