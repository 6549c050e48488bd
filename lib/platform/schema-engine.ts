import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { PrismaPg } from '@prisma/adapter-pg'
import {
  bindMigrationAwareSqlAdapterFactory,
  ColumnTypeEnum,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils'
import type { DiffParams, DiffResult } from '@prisma/schema-engine-wasm'

/**
 * Prisma's schema engine as WebAssembly, run in this process: its command line would download a native one. For
 * developers only; a shop never needs it. The engine's package is pinned exactly, since it has pre-releases only.
 */

interface Engine {
  diff(params: DiffParams): Promise<DiffResult>
  free(): void
}

interface EngineModule {
  __wbg_set_wasm(exports: WebAssembly.Exports): void
  SchemaEngine: {
    new: (
      options: { datamodels: [string, string][] },
      log: (entry: string) => void,
      adapter: object,
    ) => Promise<Engine>
  }
}

const schemaName = 'schema.prisma'

/**
 * The SQL that would turn a database into what a schema asks for: '' when they agree. Checks, triggers, views and
 * partial indexes are outside the schema language and count neither way.
 * @param databaseUrl a Postgres database
 * @param schema the text of schema.prisma
 */
export async function sqlTowards(databaseUrl: string, schema: string): Promise<string> {
  const { SchemaEngine } = await engineModule()
  const adapter = bindMigrationAwareSqlAdapterFactory(readableCatalogues(databaseUrl))
  const engine = await SchemaEngine.new({ datamodels: [[schemaName, schema]] }, () => {}, adapter)
  const files = [{ path: schemaName, content: schema }]
  try {
    const { exitCode, stdout } = await engine.diff({
      from: { tag: 'schemaDatasource', files, configDir: process.cwd() },
      to: { tag: 'schemaDatamodel', files },
      script: true,
      exitCode: true,
      filters: { externalTables: [], externalEnums: [] },
    })
    return exitCode === 0 ? '' : (stdout ?? '')
  } finally {
    engine.free()
  }
}

let loaded: Promise<EngineModule> | null = null

function engineModule(): Promise<EngineModule> {
  loaded ??= loadEngine()
  return loaded
}

/** The package's exports hide its parts, so they are loaded by their path. */
async function loadEngine(): Promise<EngineModule> {
  // Without it a panic of the engine ends in a missing global instead of its own message.
  Object.assign(globalThis, { PRISMA_WASM_PANIC_REGISTRY: { set_message() {} } })
  const folder = dirname(fileURLToPath(import.meta.resolve('@prisma/schema-engine-wasm')))
  const bindings = pathToFileURL(join(folder, 'schema_engine_bg.js')).href
  const engine = (await import(/* @vite-ignore */ bindings)) as EngineModule & WebAssembly.ModuleImports
  const module = await WebAssembly.compile(readFileSync(join(folder, 'schema_engine_bg.wasm')))
  const { exports } = await WebAssembly.instantiate(module, { './schema_engine_bg.js': engine })
  engine.__wbg_set_wasm(exports)
  const begin = exports.__wbindgen_start as () => void
  begin()
  return engine
}

/**
 * Postgres' catalogues hold columns of type "char", which the adapter refuses. They are passed through it under the
 * number of the array of that type, and named as what they are afterwards: the engine asks no catalogue for such arrays.
 */
function readableCatalogues(connectionString: string): SqlMigrationAwareDriverAdapterFactory {
  const factory = new PrismaPg({ connectionString, max: 2 })
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: async () => withChars(await factory.connect()),
    connectToShadowDb: async () => withChars(await factory.connectToShadowDb()),
  }
}

const charType = 18
const charArrayType = 1002

function withChars<A extends SqlDriverAdapter & { underlyingDriver(): unknown }>(adapter: A): A {
  const pool = adapter.underlyingDriver() as { query: (...words: unknown[]) => Promise<QueryAnswer> }
  const query = pool.query.bind(pool)
  pool.query = async (...words) => {
    const answer = await query(...words)
    for (const field of answer.fields) if (field.dataTypeID === charType) field.dataTypeID = charArrayType
    return answer
  }
  const queryRaw = adapter.queryRaw.bind(adapter)
  const { Character, CharacterArray } = ColumnTypeEnum
  adapter.queryRaw = async (asked) => {
    const answer = await queryRaw(asked)
    const columnTypes = answer.columnTypes.map((type) => (type === CharacterArray ? Character : type))
    return { ...answer, columnTypes }
  }
  return adapter
}

interface QueryAnswer {
  readonly fields: { dataTypeID: number }[]
}
