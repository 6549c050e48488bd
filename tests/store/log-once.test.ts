import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { writeEntry } from '#lib/services/log'
import { db } from '#lib/store/db'
import { ada, aMould, book, countsOf, entry, lam, logEntryCount, refusal } from './book'

book()

describe('an entry that is sent again', () => {
  test('same id, same content: one row, the same answer, and it says that it was not written now', async () => {
    const { id: mouldId } = await aMould()
    const pull = entry(mouldId, 'pull')
    expect(await writeEntry(ada, pull)).toEqual({ id: pull.id, written: true })
    expect(await writeEntry(ada, pull)).toEqual({ id: pull.id, written: false })
    expect(await logEntryCount(mouldId)).toBe(1)
  })

  test('keys in another order are the same content', async () => {
    const { id: mouldId } = await aMould()
    const pull = entry(mouldId, 'pull')
    await writeEntry(ada, pull)
    const turned = Object.fromEntries(Object.entries(pull).reverse()) as typeof pull
    expect((await writeEntry(ada, turned)).written).toBe(false)
  })

  test('twenty at once: one row, and one of them has written it', async () => {
    const { id: mouldId } = await aMould()
    const pull = entry(mouldId, 'pull')
    const answers = await Promise.all(Array.from({ length: 20 }, () => writeEntry(lam, pull)))
    expect(new Set(answers.map((answer) => answer.id))).toEqual(new Set([pull.id]))
    expect(answers.filter((answer) => answer.written)).toHaveLength(1)
    expect(await logEntryCount(mouldId)).toBe(1)
    expect((await countsOf(mouldId)).pulls).toBe(1)
  })

  test('same id, other content: refused with the stored entry, in words and as it stands', async () => {
    const { id: mouldId } = await aMould()
    const coat = entry(mouldId, 'coat', { data: { coats: 3 } })
    await writeEntry(lam, coat)
    const refused = await refusal(
      writeEntry(ada, entry(mouldId, 'coat', { id: coat.id, data: { coats: 4 } })),
    )
    expect(refused.status).toBe(409)
    expect(refused.message).toMatch(/3 coats, Whole face, release, on 2024-05-10 by Lam Hands/)
    expect(refused.stored).toMatchObject({
      id: coat.id,
      kind: 'coat',
      byName: 'Lam Hands',
      data: { coats: 3 },
    })
    expect(await logEntryCount(mouldId)).toBe(1)
  })

  test('the id of an entry of another mould is refused as well, also when both are sent at once', async () => {
    const [one, other] = [await aMould(), await aMould()]
    const id = randomUUID()
    const sent = await Promise.allSettled([
      writeEntry(ada, entry(one.id, 'pull', { id })),
      writeEntry(ada, entry(other.id, 'pull', { id })),
    ])
    const refused = sent.filter((each) => each.status === 'rejected')
    expect(refused).toHaveLength(1)
    expect(refused[0]?.reason).toMatchObject({ name: 'Refusal', status: 409 })
    const [row] = await db().sql`select count(*)::int as rows from log_entry where id = ${id}`
    expect(row?.rows).toBe(1)
  })

  test('a person and a token both stand by name; the audit names each entry once', async () => {
    const { id: mouldId } = await aMould()
    const script = { id: null, name: 'token rig', role: 'laminator' as const }
    const pull = entry(mouldId, 'pull')
    await writeEntry(script, pull)
    await writeEntry(script, pull)
    const rows = await db().sql`select by_id, by_name from audit where record_id = ${pull.id}`
    expect([...rows]).toEqual([{ by_id: null, by_name: 'token rig' }])
  })
})

test('T48: "Log pull" pressed twice on a slow tablet, then the result page loaded again', async () => {
  const folder = 'tests/cases/T48a-double-submitted-form'
  const expected = JSON.parse(readFileSync(`${folder}/expected.json`, 'utf8'))
  const scenario = JSON.parse(readFileSync(`${folder}/scenario.json`, 'utf8')) as { request: unknown }[]
  const sent = scenario.map(({ request }) => request).filter((request) => typeof request === 'object')
  const { id: mouldId } = await aMould({ code: 'M-01' })
  // The form's hidden id is its token: the same in both presses.
  const ids = new Map<string, string>()
  const answers = await Promise.all(
    (sent as { form_token: string; part: string }[]).map(({ form_token, part }) => {
      const id = ids.get(form_token) ?? randomUUID()
      ids.set(form_token, id)
      return writeEntry(lam, entry(mouldId, 'pull', { id, data: { serial: part } }))
    }),
  )
  expect((await countsOf(mouldId)).pulls).toBe(expected.pulls_added)
  expect(new Set(answers.map((answer) => answer.id)).size === 1).toBe(expected.responses_same_id)
  // Reading the page again adds nothing.
  expect((await countsOf(mouldId)).pulls).toBe(expected.pulls_added)
})
