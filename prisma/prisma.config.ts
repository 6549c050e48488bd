import { defineConfig } from 'prisma/config'

/**
 * For Prisma's command line: `prisma <command> --config prisma/prisma.config.ts`; paths are relative to this file.
 * The address is needed only by its own migrate commands, so an unset variable is no error here.
 */
export default defineConfig({
  schema: 'schema.prisma',
  migrations: { path: 'migrations' },
  datasource: { url: process.env.DATABASE_URL ?? '' },
})
