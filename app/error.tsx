'use client'
import { Broken } from './ui/broken'

export default function RootError({ retry }: { readonly error: unknown; readonly retry: () => void }) {
  return (
    <main className="page">
      <Broken retry={retry} />
    </main>
  )
}
