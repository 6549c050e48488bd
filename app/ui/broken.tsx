'use client'

/** Something broke: what that means for what was typed, and a way on. */
export function Broken({ retry }: { readonly retry: () => void }) {
  return (
    <div className="empty" role="alert">
      <p>
        <b>This page could not be made.</b> Nothing was changed by it. The shop's server may be starting, or
        its database may be away.
      </p>
      <p>
        <button type="button" className="btn" onClick={retry}>
          Try again
        </button>
      </p>
    </div>
  )
}
