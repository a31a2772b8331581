import { defineConfig, type TestProjectInlineConfiguration } from 'vitest/config'

/**
 * Needs a browser, an app that answers, or more than a moment: the first project whose folder or ending fits. What is
 * left needs nothing but itself and answers in seconds.
 */
const folders = {
  browser: ['tests/browser/**/*.test.ts'],
  http: ['tests/http/**/*.test.ts', 'tests/store/**/*.test.ts'],
  // Walks over every fault of the shipped trees, and over many machines or small models; elsewhere what ends in `.long`.
  walks: ['tests/{health,knowledge,person,practice}/**/*.test.ts', 'tests/**/*.long.test.ts'],
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
