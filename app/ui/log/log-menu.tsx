import type { Route } from 'next'
import { kindNames } from '#lib/core/log/index'
import { Link } from '../link'
import { kindGroups, kindHints } from './kind-groups'
import './log.css'

interface Where {
  readonly of: 'mould' | 'pattern'
  /** "/moulds/LH-P" */
  readonly base: string
  /** Carried along, so that the form leads back to where it was opened: "m" for the page at the mould. */
  readonly from?: string
}

const hrefOf = ({ base, from }: Where, kind: string) =>
  `${base}/log/${kind}${from ? `?from=${from}` : ''}` as Route

/** Every kind of entry by group, as lines of a menu. */
export function LogMenu(where: Where) {
  return (
    <>
      {kindGroups(where.of).map(({ name, kinds }) => (
        <div key={name} className="log-menu-group">
          <p className="note">{name}</p>
          {kinds.map((kind) => (
            <Link key={kind} href={hrefOf(where, kind)}>
              {kindNames[kind]}
            </Link>
          ))}
        </div>
      ))}
    </>
  )
}

/** The same as a page of large targets, each with what it is for. */
export function LogKinds(where: Where) {
  return (
    <div className="log-kinds">
      {kindGroups(where.of).map(({ name, kinds }) => (
        <section key={name} className="rule-top">
          <h2>{name}</h2>
          <ul>
            {kinds.map((kind) => (
              <li key={kind}>
                <Link href={hrefOf(where, kind)}>
                  <b>{kindNames[kind]}</b>
                  <span className="note">{kindHints[kind]}</span>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  )
}
