import type { ReactNode } from 'react'
import { WayBack } from './way-back'

/** In the place of a form that the person's role may not fill in: who does it, and the way back. */
export function NotYours({ children }: { readonly children: ReactNode }) {
  return (
    <div className="empty">
      <p>{children}</p>
      <WayBack />
    </div>
  )
}
