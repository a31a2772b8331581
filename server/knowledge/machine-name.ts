import type { Machine } from './schema/index.ts'

/** What a machine is called on every page: maker and name. */
export const machineName = ({ maker, name }: Pick<Machine, 'maker' | 'name'>): string =>
  `${maker} ${name}`
