import { type ChildProcess, fork } from 'node:child_process'
import { join } from 'node:path'

/** What a worker is asked; sides and pixels of the picture. */
export interface PictureTask {
  readonly bytes: Uint8Array
  readonly fullSidePx: number
  readonly smallSidePx: number
  readonly mostPixels: number
  readonly leastSidePx: number
}

export type PictureAnswer =
  | {
      readonly ok: true
      readonly mimeType: 'image/jpeg' | 'image/png'
      readonly widthPx: number
      readonly heightPx: number
      readonly full: Uint8Array<ArrayBuffer>
      readonly small: Uint8Array<ArrayBuffer>
      /** The block of EXIF that the file had. */
      readonly exif: Uint8Array | null
      /** Pictures in the file: of an animation, of a document with pages. */
      readonly pages: number
    }
  | {
      readonly ok: false
      readonly fault: 'pixels' | 'small'
      readonly widthPx: number
      readonly heightPx: number
    }
  | { readonly ok: false; readonly fault: 'broken'; readonly said: string }
  /** died: the process ended over this picture. unready: it can't even start. busy: too many wait. */
  | { readonly ok: false; readonly fault: 'died' | 'late' | 'unready' | 'busy' }

interface Settings {
  /** A script that says { ready: true }, then answers each task with one message. */
  readonly workerPath: string
  readonly mostWorkers: number
  readonly mostWaiting: number
  /** For one picture, from its start. */
  readonly timeoutMs: number
  /** A worker without work ends after this while. */
  readonly restMs: number
}

export type PicturePool = (task: PictureTask) => Promise<PictureAnswer>

interface Job {
  readonly task: PictureTask
  readonly settle: (answer: PictureAnswer) => void
}

interface Worker {
  readonly child: ChildProcess
  ready: boolean
  job: Job | null
  timer: NodeJS.Timeout | undefined
}

/** Names that a process needs to run at all; the shop's secrets are not among them. */
const passedOn = ['PATH', 'HOME', 'TMPDIR', 'TEMP', 'TMP', 'SystemRoot', 'LD_LIBRARY_PATH', 'TZ']

/** A few processes that decode pictures, started when there is work. Never rejects: each fault is an answer. */
export function makePicturePool(settings: Settings): PicturePool {
  const workers = new Set<Worker>()
  const waiting: Job[] = []

  function start(): Worker {
    const env = Object.fromEntries(
      passedOn.flatMap((name) => (process.env[name] === undefined ? [] : [[name, process.env[name]]])),
    )
    const child = fork(/* turbopackIgnore: true */ settings.workerPath, [], {
      execArgv: ['--max-old-space-size=256'],
      env: env as NodeJS.ProcessEnv,
      serialization: 'advanced',
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    })
    const worker: Worker = { child, ready: false, job: null, timer: undefined }
    workers.add(worker)
    child.on('message', (message) => heard(worker, message))
    const end = () => ended(worker, worker.ready ? 'died' : 'unready')
    child.on('error', end)
    child.on('exit', end)
    return worker
  }

  function heard(worker: Worker, message: unknown): void {
    // What it said when its time was over: it is given no more work.
    if (!workers.has(worker)) return
    if (typeof message === 'object' && message !== null && 'ready' in message) {
      worker.ready = true
      return
    }
    finish(worker, message as PictureAnswer)
    next(worker)
  }

  /** Whoever waits for the process to end must not wait for an idle worker. */
  function hold(worker: Worker, busy: boolean): void {
    const channel = worker.child.channel
    if (busy) {
      worker.child.ref()
      channel?.ref()
    } else {
      worker.child.unref()
      channel?.unref()
    }
  }

  function finish(worker: Worker, answer: PictureAnswer): void {
    const { job } = worker
    worker.job = null
    clearTimeout(worker.timer)
    job?.settle(answer)
  }

  function ended(worker: Worker, fault: 'died' | 'late' | 'unready'): void {
    if (!workers.delete(worker)) return
    worker.child.kill('SIGKILL')
    finish(worker, { ok: false, fault })
    if (waiting.length > 0 && workers.size < settings.mostWorkers) next(start())
  }

  function next(worker: Worker): void {
    const job = waiting.shift()
    hold(worker, job !== undefined)
    if (job === undefined) {
      worker.timer = setTimeout(() => ended(worker, 'died'), settings.restMs).unref()
      return
    }
    clearTimeout(worker.timer)
    worker.job = job
    worker.timer = setTimeout(() => ended(worker, 'late'), settings.timeoutMs)
    // A worker that has just died says so by its end.
    worker.child.send(job.task, () => {})
  }

  return (task) =>
    new Promise((settle) => {
      if (waiting.length >= settings.mostWaiting) {
        settle({ ok: false, fault: 'busy' })
        return
      }
      waiting.push({ task, settle })
      const idle = [...workers].find((worker) => worker.job === null)
      if (idle) next(idle)
      else if (workers.size < settings.mostWorkers) next(start())
    })
}

const held = globalThis as typeof globalThis & { mouldwrightPictures?: PicturePool }

/** The pool of this process; the worker stands in the checkout, from which the shop is started. */
export function picturePool(): PicturePool {
  held.mouldwrightPictures ??= makePicturePool({
    workerPath: join(/* turbopackIgnore: true */ process.cwd(), 'lib/exchange/picture/worker.js'),
    mostWorkers: 2,
    mostWaiting: 12,
    timeoutMs: 30_000,
    restMs: 60_000,
  })
  return held.mouldwrightPictures
}
