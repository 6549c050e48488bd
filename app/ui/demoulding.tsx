/** How a part comes out of the mould, and what is never done to it. */
export function Demoulding({ notes, doNots }: { readonly notes: string; readonly doNots: string }) {
  if (!notes && !doNots) return null
  return (
    <section className="rule-top">
      <h2>Demoulding</h2>
      {notes ? <p>{notes}</p> : null}
      {doNots ? (
        <p>
          <span className="held">Never:</span> {doNots}
        </p>
      ) : null}
    </section>
  )
}
