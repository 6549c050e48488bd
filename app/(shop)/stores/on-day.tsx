/** Chooses the day whose prices or rates are shown; a plain form that needs no script. */
export function OnDay({
  action,
  day,
  what,
}: {
  readonly action: string
  readonly day: string
  readonly what: string
}) {
  return (
    <form className="acts on-day" action={action} style={{ marginBottom: 16 }}>
      <label htmlFor="on-day">{what} on</label>
      <input id="on-day" type="date" name="on" defaultValue={day} style={{ width: 170 }} />
      <button type="submit" className="btn no-print">
        Show
      </button>
    </form>
  )
}
