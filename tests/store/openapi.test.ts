import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { HomographyRequest } from '#lib/schema/homography'
import { logRequest, setLogRequest } from '#lib/schema/log-request'
import { JoinRequest, PlateRequest } from '#lib/schema/mechanics'
import { OffsetRequest, OutlineRequest, PatchInputSchema } from '#lib/schema/patch'
import { openApi } from '#lib/web/openapi'
import { GET } from '../../app/api/v1/openapi.json/route'

/** The description of the API, as somebody gets it who is not signed in. */

type Json = Readonly<Record<string, unknown>>

interface Operation {
  readonly operationId: string
  readonly summary: string
  readonly tags: readonly string[]
  readonly security?: readonly unknown[]
  readonly parameters?: readonly {
    readonly name: string
    readonly in: string
    readonly schema: Json
    readonly required?: boolean
  }[]
  readonly requestBody?: {
    readonly content: Readonly<
      Record<
        string,
        { readonly schema: Json; readonly examples?: Readonly<Record<string, { readonly value: unknown }>> }
      >
    >
  }
  readonly responses: Readonly<Record<string, { readonly description: string; readonly content: Json }>>
}

const methods = ['get', 'put', 'post', 'delete', 'options', 'head', 'patch', 'trace'] as const

const answer = GET()
const body = (await answer.json()) as Json & {
  readonly paths: Readonly<Record<string, Json>>
  readonly components: { readonly schemas: Readonly<Record<string, Json>>; readonly securitySchemes: Json }
}

const operations = Object.entries(body.paths).flatMap(([path, item]) =>
  methods.flatMap((method) =>
    item[method] ? [{ path, method, item, operation: item[method] as Operation }] : [],
  ),
)

/** Every object within, with the way to it. */
function* objects(value: unknown, way = '#'): Generator<readonly [string, Json]> {
  if (typeof value !== 'object' || value === null) return
  if (!Array.isArray(value)) yield [way, value as Json]
  for (const [key, inner] of Object.entries(value))
    yield* objects(inner, `${way}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`)
}

function resolve(reference: string): unknown {
  let place: unknown = body
  for (const step of reference.replace(/^#\//, '').split('/')) {
    place = (place as Json | undefined)?.[step.replaceAll('~1', '/').replaceAll('~0', '~')]
  }
  return place
}

test('is open, is JSON, and says the same as what it is made from', () => {
  expect(answer.status).toBe(200)
  expect(answer.headers.get('content-type')).toMatch('application/json')
  expect(body).toEqual(JSON.parse(JSON.stringify(openApi())))
})

describe('as OpenAPI 3.1', () => {
  test('has the fields that must be there, and no others at the top', () => {
    expect(body.openapi).toMatch(/^3\.1\.\d+$/)
    expect(body.info).toMatchObject({ title: expect.any(String), version: expect.any(String) })
    const known = [
      'openapi',
      'info',
      'jsonSchemaDialect',
      'servers',
      'paths',
      'webhooks',
      'components',
      'security',
      'tags',
      'externalDocs',
    ]
    expect(Object.keys(body).filter((key) => !known.includes(key))).toEqual([])
  })

  test('every reference leads somewhere', () => {
    const lost = [...objects(body)].filter(
      ([, { $ref }]) => typeof $ref === 'string' && resolve($ref) === undefined,
    )
    expect(lost.map(([way, { $ref }]) => `${way}: ${$ref}`)).toEqual([])
  })

  test('every schema is used', () => {
    const named = new Set([...objects(body)].map(([, { $ref }]) => $ref))
    const unused = Object.keys(body.components.schemas).filter(
      (name) => !named.has(`#/components/schemas/${name}`),
    )
    expect(unused.filter((name) => !['Finding', 'WorkingStep', 'Region'].includes(name))).toEqual([])
  })

  test('schemas are JSON Schema 2020-12: types are known, lists have items, requireds are there, nothing from older dialects', () => {
    const types = ['string', 'number', 'integer', 'boolean', 'object', 'array', 'null']
    for (const [way, schema] of objects(body.components.schemas, '#/components/schemas')) {
      if (way.endsWith('/properties')) continue
      if (schema.type !== undefined && !way.endsWith('/properties')) {
        for (const type of [schema.type].flat()) expect(types, way).toContain(type)
      }
      for (const old of ['quantity', 'nullable', 'definitions', '$id', '$schema', 'example'])
        expect(schema, way).not.toHaveProperty([old])
      expect(typeof schema.exclusiveMinimum, way).not.toBe('boolean')
      if (schema.type === 'array')
        expect(schema.items !== undefined || schema.prefixItems !== undefined, way).toBe(true)
      for (const name of (schema.required as string[] | undefined) ?? [])
        expect(schema.properties, way).toHaveProperty([name])
    }
  })

  test('operations have a name of their own, a summary, a known tag, and answers with descriptions', () => {
    const names = operations.map(({ operation }) => operation.operationId)
    expect(new Set(names).size).toBe(names.length)
    const tags = (body.tags as { name: string }[]).map((tag) => tag.name)
    for (const { operation } of operations) {
      expect(operation.summary.length).toBeGreaterThan(5)
      for (const tag of operation.tags) expect(tags).toContain(tag)
      expect(Object.keys(operation.responses).length).toBeGreaterThan(0)
      for (const [status, response] of Object.entries(operation.responses)) {
        expect(status).toMatch(/^[2-5]\d\d$/)
        expect(response.description.length).toBeGreaterThan(3)
        expect(Object.keys(response.content)).toEqual([
          Number(status) < 400 || status === '503' ? 'application/json' : 'application/problem+json',
        ])
      }
    }
  })

  test('parts of a path are declared as its parameters, and the other way round', () => {
    for (const { path, item, operation } of operations) {
      const declared = [
        ...((item.parameters as Operation['parameters']) ?? []),
        ...(operation.parameters ?? []),
      ]
      const inPath = declared.filter((parameter) => parameter.in === 'path')
      expect(inPath.map((parameter) => parameter.name)).toEqual(
        [...path.matchAll(/\{(\w+)\}/g)].map((match) => match[1]),
      )
      for (const parameter of inPath) expect(parameter.required).toBe(true)
      for (const parameter of declared) expect(parameter.schema).toBeDefined()
    }
  })

  test('what is not open tells of 401 and names a way to sign in that is described', () => {
    const schemes = Object.keys(body.components.securitySchemes)
    expect((body.security as Json[]).flatMap((each) => Object.keys(each)).sort()).toEqual([...schemes].sort())
    for (const { operation } of operations) {
      const open = operation.security?.length === 0
      expect(Object.keys(operation.responses).includes('401')).toBe(!open)
    }
    const open = operations
      .filter(({ operation }) => operation.security?.length === 0)
      .map(({ path }) => path)
    expect(open.sort()).toEqual(['/api/health', '/api/v1/openapi.json'])
  })
})

describe('and the routes', () => {
  const files = ['app/api/v1', 'app/api/health'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((file) => file.name === 'route.ts')
      .map((file) => join(file.parentPath, file.name)),
  )
  const modules = import.meta.glob('../../app/api/**/route.ts', { eager: true }) as Readonly<
    Record<string, Json>
  >

  test('each route file stands in it with each of its methods, and nothing else does', () => {
    expect(files.length).toBeGreaterThan(7)
    const there = files.flatMap((file) => {
      const path = `/${file.replace(/^app\//, '').replace(/\/route\.ts$/, '')}`.replaceAll(
        /\[(\w+)\]/g,
        '{$1}',
      )
      const exported = Object.keys(modules[`../../${file}`] ?? {})
      return exported
        .filter((name) => methods.includes(name.toLowerCase() as 'get'))
        .map((name) => `${name} ${path}`)
    })
    expect(operations.map(({ method, path }) => `${method.toUpperCase()} ${path}`).sort()).toEqual(
      there.sort(),
    )
  })
})

describe('examples', () => {
  const schemas: Readonly<
    Record<string, { safeParse: (value: unknown) => { success: boolean; error?: unknown } }>
  > = {
    '#/components/schemas/OutlineRequest': OutlineRequest,
    '#/components/schemas/PatchRequest': PatchInputSchema,
    '#/components/schemas/OffsetRequest': OffsetRequest,
    '#/components/schemas/HomographyRequest': HomographyRequest,
    '#/components/schemas/PlateRequest': PlateRequest,
    '#/components/schemas/JoinRequest': JoinRequest,
    '#/components/schemas/LogRequest': logRequest({}),
    '#/components/schemas/SetLogRequest': setLogRequest({}),
  }
  const examples = operations.flatMap(({ operation }) => {
    const json = operation.requestBody?.content['application/json']
    return Object.entries(json?.examples ?? {}).map(
      ([name, { value }]) => [name, String(json?.schema.$ref), value] as const,
    )
  })

  test('every JSON body has one', () => {
    const bodies = operations.filter(({ operation }) => operation.requestBody?.content['application/json'])
    const bare = bodies.filter(
      ({ operation }) => !operation.requestBody?.content['application/json']?.examples,
    )
    expect(bare.map(({ path }) => path)).toEqual([])
  })

  test.each(examples)('%s is taken by %s', (_name, reference, value) => {
    const parsed = schemas[reference]?.safeParse(value)
    expect(parsed?.success, JSON.stringify(parsed?.error)).toBe(true)
  })
})

test('numbers carry their unit in the name, and nothing is the text of a form', () => {
  const { properties } = body.components.schemas.PatchRequest as {
    properties: Readonly<Record<string, Json>>
  }
  expect(properties.measuredThicknessMm).toMatchObject({ type: 'array', items: { type: 'number' } })
  expect(properties.nextPartCureC).toMatchObject({ anyOf: [{ type: 'number' }, { type: 'null' }] })
})

test('nothing of the machine or of the accounts is told', () => {
  const text = JSON.stringify(body)
  for (const secret of ['password', 'token_hash', 'DATABASE', 'postgres', process.cwd()])
    expect(text).not.toContain(secret)
})
