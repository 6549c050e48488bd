import type { Metadata, Viewport } from 'next'
import type { ReactNode } from 'react'
import { mono, sans } from './fonts'
import './globals.css'

export const metadata: Metadata = {
  title: { default: 'Mouldwright', template: '%s · Mouldwright' },
  description: 'The working book of a shop that builds composite parts in its own moulds',
}

export const viewport: Viewport = { width: 'device-width', initialScale: 1 }

export default function Layout({ children }: { readonly children: ReactNode }) {
  return (
    <html lang="en-GB" className={`${sans.variable} ${mono.variable}`}>
      <body>{children}</body>
    </html>
  )
}
