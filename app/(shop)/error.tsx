'use client'
import { Broken } from '../ui/broken'

export default function ShopError({ retry }: { readonly error: unknown; readonly retry: () => void }) {
  return <Broken retry={retry} />
}
