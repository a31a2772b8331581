import type { Machine } from './schema/index.ts'

/** What a machine is called on every page: maker and name. */
export const machineName = ({ maker, name }: Pick<Machine, 'maker' | 'name'>): string =>
  `${maker} ${name}`

/** What a part is called on its sheet; by its short name where the sheet, or the part on it, is there no more. */
export const partNameOn = (sheet: Pick<Machine, 'parts'> | undefined, part: string): string =>
  sheet?.parts.find(({ id }) => id === part)?.name ?? part
