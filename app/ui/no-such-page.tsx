import { WayBack } from './way-back'

export function NoSuchPage() {
  return (
    <>
      <h1 style={{ marginBottom: 14 }}>There is no such page</h1>
      <div className="empty">
        <p>A code may have been typed otherwise, or the link is old.</p>
        <WayBack />
      </div>
    </>
  )
}
