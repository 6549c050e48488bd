import { type LogKind, logKinds } from '../log/index'
import { kindNames } from '../log/words'
import { fold } from './fold'

/** Kinds of entries of whose name a word begins with this one: "leak" -> leak-check. Nothing for one or two letters. */
export function kindsNamed(word: string): readonly LogKind[] {
  if (word.length < 3) return []
  return logKinds.filter((kind) =>
    fold(`${kindNames[kind]} ${kind}`)
      .split(/[^a-z0-9]+/)
      .some((part) => part.startsWith(word)),
  )
}
