import { shortDate } from '#lib/core/dates'
import { figure } from '#lib/core/units'
import type { MouldPage } from '#lib/services/moulds'
import { ActionForm, type FormAct } from './action-form'
import { Hidden, TextField } from './fields'

type Area = MouldPage['areas'][number]

/** What was measured on an area, each reading with the way to strike it out; struck ones stay readable below. */
export function ThicknessReadings({
  area,
  code,
  today,
  strike,
}: {
  readonly area: Area
  readonly code: string
  readonly today: string
  /** Null where whoever looks may not write. */
  readonly strike: FormAct | null
}) {
  const { readings, struckReadings } = area
  if (readings.length + struckReadings.length === 0) {
    return (
      <p className="note">
        Nothing measured yet. A scarf is planned with the measured thickness, not with the paper one.
      </p>
    )
  }
  return (
    <table className="lines" style={{ marginBottom: 14 }}>
      <thead>
        <tr>
          <th scope="col" className="n">
            u
          </th>
          <th scope="col" className="n">
            v
          </th>
          <th scope="col" className="n">
            mm
          </th>
          <th scope="col" className="n">
            When
          </th>
          {strike ? (
            <th scope="col">
              <span className="quiet">Strike out</span>
            </th>
          ) : null}
        </tr>
      </thead>
      <tbody>
        {readings.map((reading) => (
          <tr key={reading.id}>
            <Figures reading={reading} today={today} />
            {strike ? (
              <td className="n">
                <details>
                  <summary
                    aria-label={`Strike out ${figure(reading.thicknessMm, 2)} mm at u ${figure(reading.uMm, 0)}, v ${figure(reading.vMm, 0)}`}
                  >
                    strike out
                  </summary>
                  <div style={{ padding: '8px 0', textAlign: 'left' }}>
                    <ActionForm
                      action={strike}
                      defaults={{ id: reading.id, areaId: area.id, code, because: '' }}
                      submit="Strike it out"
                    >
                      <Hidden name="id" />
                      <Hidden name="areaId" />
                      <Hidden name="code" />
                      <TextField
                        name="because"
                        label="Because"
                        hint="it stays readable and no longer counts"
                      />
                    </ActionForm>
                  </div>
                </details>
              </td>
            ) : null}
          </tr>
        ))}
        {struckReadings.map((reading) => (
          <tr key={reading.id} className="soft">
            <Figures reading={reading} today={today} struck />
            {strike ? <td /> : null}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Figures({
  reading,
  today,
  struck = false,
}: {
  readonly reading: Area['readings'][number] & {
    readonly struckByName?: string
    readonly struckBecause?: string
  }
  readonly today: string
  readonly struck?: boolean
}) {
  const line = (text: string) => (struck ? <s>{text}</s> : text)
  return (
    <>
      <td className="n">{line(figure(reading.uMm, 0))}</td>
      <td className="n">{line(figure(reading.vMm, 0))}</td>
      <td className="n">{line(figure(reading.thicknessMm, 2))}</td>
      <td className="n" title={reading.byName} style={{ whiteSpace: 'normal' }}>
        {shortDate(reading.measuredOn, today)}
        {struck ? (
          <div className="note">
            struck out by {reading.struckByName}: {reading.struckBecause}
          </div>
        ) : null}
      </td>
    </>
  )
}
