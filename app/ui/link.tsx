import NextLink from 'next/link'
import type { ComponentProps } from 'react'

/**
 * A link that asks the shop for nothing before it is followed. Every page is made fresh for whoever is signed in, so
 * pages fetched ahead (some 40 of them for a rack) would only be thrown away.
 */
function QuietLink(props: ComponentProps<typeof NextLink>) {
  return <NextLink prefetch={false} {...props} />
}

/** With the type of the framework's own link: its addresses are checked. */
export const Link = QuietLink as typeof NextLink
