'use client'
import type { LogKind } from '#lib/core/log/index'
import { BookFields } from './log/book-fields'
import { ConditionFields } from './log/condition-fields'
import type { LogFieldsProps } from './log/field-options'
import { LayUpFields } from './log/lay-up-fields'
import { ReleaseFields } from './log/release-fields'

const partOf: Readonly<Record<LogKind, typeof BookFields>> = {
  cleared: LayUpFields,
  pull: LayUpFields,
  heat: LayUpFields,
  pins: LayUpFields,
  strip: ReleaseFields,
  clean: ReleaseFields,
  seal: ReleaseFields,
  coat: ReleaseFields,
  'tape-test': ReleaseFields,
  'test-patch': ReleaseFields,
  'leak-check': ConditionFields,
  inspection: ConditionFields,
  damage: ConditionFields,
  measured: ConditionFields,
  repair: ConditionFields,
  'dowel-changed': ConditionFields,
  're-machined': ConditionFields,
  moved: BookFields,
  state: BookFields,
  matter: BookFields,
  settled: BookFields,
  'before-book': BookFields,
  note: BookFields,
  correction: BookFields,
  'patch-laid': BookFields,
  proved: BookFields,
}

/** What each kind of entry asks for. The usual answer is preset. */
export function LogFields(props: LogFieldsProps) {
  const Part = partOf[props.kind]
  return <Part {...props} />
}
