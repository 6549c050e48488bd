import { defineConfig } from 'vitest/config'

/** Store code imports 'server-only', which resolves to nothing only under the react-server condition. */
const server = {
  resolve: { conditions: ['react-server'] },
  ssr: { resolve: { conditions: ['react-server'] } },
}

export default defineConfig({
  test: {
    projects: [
      { test: { name: 'core', root: '.', include: ['tests/core/**/*.test.ts', 'tests/*.test.ts'] } },
      { test: { name: 'reference', root: '.', include: ['tests/reference/**/*.test.ts'] } },
      {
        ...server,
        test: {
          name: 'store',
          root: '.',
          include: ['tests/store/**/*.test.ts'],
          globalSetup: ['tests/support/database.ts'],
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
      {
        ...server,
        test: {
          name: 'browser',
          root: '.',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/support/app.ts'],
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      {
        ...server,
        test: {
          name: 'faults',
          root: '.',
          include: ['tests/faults/**/*.test.ts'],
          fileParallelism: false,
          testTimeout: 300_000,
          hookTimeout: 120_000,
        },
      },
      {
        ...server,
        test: {
          name: 'bench',
          root: '.',
          include: ['tests/bench/**/*.test.ts'],
          globalSetup: ['tests/support/app.ts'],
          testTimeout: 1_800_000,
          hookTimeout: 120_000,
        },
      },
      { test: { name: 'long', root: '.', include: ['tests/long/**/*.test.ts'], testTimeout: 1_800_000 } },
    ],
  },
})
