import type { ReactNode } from 'react'
import {
  type DisplayList as Drawing,
  type GroupItem,
  type Item,
  joinedPaths,
  primitives,
  pxPerPaperMm,
  type Subject,
} from '#lib/core/drawing/index'
import styles from './drawing.module.css'
import { SvgPrimitive } from './svg-primitive'

export interface DisplayListProps {
  readonly list: Drawing
  /** Unique on the page; title and description are named after it. */
  readonly id: string
  /** Where a dowel, patch or opening leads; null for no link. Left out: the drawing is a picture without links. */
  readonly hrefOf?: (subject: Subject) => string | null
  readonly className?: string
}

/**
 * A display list as SVG with one unit to a millimetre. It fills its container up to the size that it was made
 * for, where its text reads as meant; in a narrower container make the list for that width.
 */
export function DisplayList({ list, id, hrefOf, className }: DisplayListProps) {
  const linked =
    hrefOf !== undefined && list.items.some((item) => item.kind === 'group' && hrefOf(item.subject))
  const usualPx = (list.widthMm / list.denominator) * pxPerPaperMm
  return (
    <svg
      viewBox={`0 0 ${round(list.widthMm)} ${round(list.heightMm)}`}
      role={linked ? 'group' : 'img'}
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-desc`}
      className={className === undefined ? styles.drawing : `${styles.drawing} ${className}`}
      style={{ maxWidth: `${round(usualPx)}px` }}
    >
      <title id={`${id}-title`}>{list.title}</title>
      <desc id={`${id}-desc`}>{descriptionOf(list)}</desc>
      <DisplayItems list={list} {...(linked ? { hrefOf } : {})} />
    </svg>
  )
}

/** What a list draws, for an SVG of its own. */
export function DisplayItems({ list, hrefOf }: Pick<DisplayListProps, 'list' | 'hrefOf'>) {
  return joinedPaths(list.items).map((item, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a display list is made anew as a whole, its order is its identity
    <SvgItem key={index} item={item} list={list} href={hrefOf ? hrefOfItem(item, hrefOf) : null} />
  ))
}

function SvgItem({ item, list, href }: { item: Item; list: Drawing; href: string | null }) {
  const shapes = primitives([item]).map((shape, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: see above
    <SvgPrimitive key={index} shape={shape} denominator={list.denominator} />
  ))
  if (item.kind !== 'group') return <>{shapes}</>
  if (href === null) return <g>{shapes}</g>
  return (
    <GroupLink item={item} href={href} list={list}>
      {shapes}
    </GroupLink>
  )
}

/** Touch needs about 8 mm of paper, whatever the size of the mark. */
const leastHitPaperMm = 8

function GroupLink({
  item,
  href,
  list,
  children,
}: {
  item: GroupItem
  href: string
  list: Drawing
  children: ReactNode
}) {
  const least = leastHitPaperMm * list.denominator
  const width = Math.max(item.hit.right - item.hit.left, least)
  const height = Math.max(item.hit.bottom - item.hit.top, least)
  const x = (item.hit.left + item.hit.right - width) / 2
  const y = (item.hit.top + item.hit.bottom - height) / 2
  return (
    <a href={href} aria-label={item.label} data-subject={item.subject.kind}>
      <rect
        x={round(x)}
        y={round(y)}
        width={round(width)}
        height={round(height)}
        fill="transparent"
        stroke="none"
      />
      {children}
    </a>
  )
}

function hrefOfItem(item: Item, hrefOf: (subject: Subject) => string | null): string | null {
  return item.kind === 'group' ? hrefOf(item.subject) : null
}

export function descriptionOf(list: Drawing): string {
  if (list.omittedLabels.length === 0) return list.description
  return `${list.description} No room at this size for: ${list.omittedLabels.join(', ')}.`
}

function round(mm: number): number {
  return Math.round(mm * 100) / 100
}
