import { defineConfig, type TestProjectInlineConfiguration } from 'vitest/config'

/** Needs a browser, an app that answers, or nothing but itself: the first project whose folder fits. */
const folders = {
  browser: ['tests/browser/**/*.test.ts'],
  http: ['tests/http/**/*.test.ts', 'tests/store/**/*.test.ts'],
  // Minutes of walks over every fault of the shipped trees, and over many small models.
  walks: ['tests/knowledge/**/*.test.ts', 'tests/health/**/*.test.ts'],
}

/** One process for all files of a project: what they load, they load once. */
const project = (
  name: string,
  test: TestProjectInlineConfiguration['test'],
): TestProjectInlineConfiguration => ({ extends: true, test: { name, isolate: false, ...test } })

export default defineConfig({
  test: {
    root: `${import.meta.dirname}/..`,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    projects: [
      project('unit', {
        include: ['tests/**/*.test.ts'],
        exclude: Object.values(folders).flat(),
      }),
      project('walks', { include: folders.walks }),
      project('http', { include: folders.http, globalSetup: 'tests/support/one-folder.ts' }),
      project('browser', { include: folders.browser }),
    ],
  },
})
