import { join } from 'node:path'

/** Works from `server/` and from its build alike: both stand beside the folders of the project. */
const project = join(import.meta.dirname, '..', '..')

export const viewsFolder = join(project, 'views')
export const staticFolder = join(project, 'static')
export const htmxFile = join(project, 'node_modules', 'htmx.org', 'dist', 'htmx.min.js')
