import { papers } from '#lib/services/sheets'
import './downloads.css'

/**
 * The sheets on another paper, and the plan's outlines for other programs. A plain form, so that it works before any
 * script; the version that is shown goes with it.
 */
export function Downloads({ patchId, versionNo }: { readonly patchId: string; readonly versionNo: number }) {
  const at = `/patches/${patchId}`
  const version = `?v=${versionNo}`
  return (
    <details className="no-print plan-downloads">
      <summary>Other papers, outlines as a drawing file</summary>
      <form method="get" action={`${at}/bench-sheet`} className="acts">
        <input type="hidden" name="v" value={versionNo} />
        <label htmlFor="paper">Print on</label>
        <select id="paper" name="paper" defaultValue="a4">
          {papers.map(({ paper, name }) => (
            <option key={paper} value={paper}>
              {name}
            </option>
          ))}
        </select>
        <button className="btn" type="submit">
          the bench sheet
        </button>
        <button className="btn" type="submit" formAction={`${at}/templates`}>
          the ply templates
        </button>
      </form>
      <span>
        Outlines as laid:{' '}
        <a href={`${at}/outlines.dxf${version}`} aria-label="DXF, as laid">
          DXF
        </a>
        ,{' '}
        <a href={`${at}/outlines.svg${version}`} aria-label="SVG, as laid">
          SVG
        </a>
        ; seen from the cavity:{' '}
        <a href={`${at}/outlines.dxf${version}&view=cavity`} aria-label="DXF, seen from the cavity">
          DXF
        </a>
        ,{' '}
        <a href={`${at}/outlines.svg${version}&view=cavity`} aria-label="SVG, seen from the cavity">
          SVG
        </a>
      </span>
    </details>
  )
}
