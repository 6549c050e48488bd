import * as z from 'zod'
import type { LogEntry } from '#lib/core/log/index'
import { asked } from '#lib/schema/fields'
import { PatternInput } from '#lib/schema/mould'
import { Refusal } from '#lib/store/errors'
import { lastOfPatterns } from '#lib/store/history'
import {
  addPattern as insertPattern,
  type PatternRow,
  readPatternByCode,
  listPatterns as readPatterns,
  changePattern as updatePattern,
} from '#lib/store/patterns'
import { initialsByName } from '#lib/store/people'
import { codeTaken, type ShopContext, shopContext, told } from './shop'
import { asking, everyone, leads, verb } from './verb'

const patternRules = { pattern_code_key: codeTaken('pattern') }

export const listPatterns = verb('patterns.list', everyone, z.object({}), () => readPatterns())

/** A pattern in the list, with the last that was written of it. */
export interface PatternLine {
  readonly pattern: PatternRow
  readonly last: LogEntry | null
}

export const listPatternLines = verb('patterns.lines', everyone, z.object({}), async () => {
  const [patterns, last, context] = await Promise.all([readPatterns(), lastOfPatterns(), shopContext()])
  return {
    lines: patterns.map((pattern): PatternLine => ({ pattern, last: last.get(pattern.id) ?? null })),
    context,
  }
})

/** What a pattern's page shows beside its log. */
export interface PatternPage {
  readonly pattern: PatternRow
  readonly initials: ReadonlyMap<string, string>
  readonly context: ShopContext
}

export const readPatternPage = asking(
  'patterns.read',
  everyone,
  z.object({ code: asked() }),
  async (_actor, { code }): Promise<PatternPage> => {
    const pattern = await readPatternByCode(code)
    if (!pattern) throw new Refusal(`There is no pattern ${code}`, { status: 404 })
    const [initials, context] = await Promise.all([initialsByName(), shopContext()])
    return { pattern, initials, context }
  },
)

export const addPattern = verb('patterns.add', leads, PatternInput, (actor, input) =>
  told(insertPattern(actor, input), patternRules),
)
export const changePattern = verb(
  'patterns.change',
  leads,
  PatternInput.safeExtend({ version: z.int() }),
  (actor, { version, ...input }) => told(updatePattern(actor, version, input), patternRules),
)
