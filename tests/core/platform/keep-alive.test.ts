import { expect, test } from 'vitest'
import { keepAlive } from '#lib/platform/keep-alive.js'
import { waitUntil } from '#lib/platform/process-mark.js'

/** A process that can be made to end. */
function process(number: number) {
  let end = () => {}
  const ended = new Promise<void>((resolve) => {
    end = resolve
  })
  return { number, end: () => end(), ended, stop: async () => end(), force: () => end() }
}

function kept() {
  const began = [process(0)]
  const told: string[] = []
  const part = keepAlive(Promise.resolve(began[0]!), {
    again: async () => {
      const next = process(began.length)
      began.push(next)
      return next
    },
    onEnd: () => told.push('end'),
    onReturn: ({ number }) => told.push(`back ${number}`),
    onGiveUp: (why) => told.push(`given up: ${why}`),
  })
  return { began, told, part }
}

test('a process that ends by itself is started again', async () => {
  const { began, told } = kept()
  began[0]!.end()
  await waitUntil(() => told.includes('back 1'), 1_000)
  began[1]!.end()
  await waitUntil(() => told.includes('back 2'), 1_000)
  expect(told).toEqual(['end', 'back 1', 'end', 'back 2'])
})

test('a process that is stopped stays stopped', async () => {
  const { began, told, part } = kept()
  await part.stop()
  await began[0]!.ended
  await waitUntil(() => began.length > 1, 50)
  expect(told).toEqual([])
  expect(began).toHaveLength(1)
})

test('a process that keeps ending is given up', async () => {
  const { began, told } = kept()
  for (let round = 0; round < 6; round += 1) {
    began[round]!.end()
    await waitUntil(() => told.includes(`back ${round + 1}`), 200)
  }
  expect(told.at(-1)).toMatch(/given up: it ended 6 times within a minute/)
  expect(began).toHaveLength(6)
})
