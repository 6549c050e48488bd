import type { listTokens } from '#lib/services/people'
import { ActionForm } from '../../ui/action-form'
import { Hidden } from '../../ui/fields'
import { endTheToken } from './actions'

type Token = Awaited<ReturnType<typeof listTokens>>[number]

/** The tokens of the shop; those that were ended stand folded away. */
export function Tokens({
  tokens,
  day,
}: {
  readonly tokens: readonly Token[]
  readonly day: (moment: string) => string
}) {
  const living = tokens.filter((token) => token.endedAt === null)
  const ended = tokens.filter((token) => token.endedAt !== null)
  return (
    <>
      {living.length === 0 ? (
        <p className="empty" style={{ marginTop: 12 }}>
          No token. Each one that is made stands here, with who made it and when it was last used.
        </p>
      ) : (
        <ul className="tokens">
          {living.map((token) => (
            <li key={token.id}>
              <div>
                <b>{token.name}</b> <span className="soft">{token.role}</span>
                <div className="note">
                  {madeBy(token)}, {day(token.createdAt)}
                  {token.makerHasLeft ? (
                    <>
                      {' · '}
                      <span className="due">has left: end it if nobody knows what it is for</span>
                    </>
                  ) : null}
                </div>
              </div>
              <div className="note">
                {token.lastUsedAt ? `last used ${day(token.lastUsedAt)}` : 'never used'}
              </div>
              <details>
                <summary>
                  End it<span className="quiet">: {token.name}</span>
                </summary>
                <div className="token-end">
                  <p className="note">Whatever uses it is refused at once, for good.</p>
                  <ActionForm action={endTheToken} defaults={{ id: token.id }} submit={`End “${token.name}”`}>
                    <Hidden name="id" />
                  </ActionForm>
                </div>
              </details>
            </li>
          ))}
        </ul>
      )}
      {ended.length > 0 ? (
        <details style={{ marginTop: 12 }}>
          <summary>
            {ended.length} {ended.length === 1 ? 'token was' : 'tokens were'} ended
          </summary>
          <ul className="tokens">
            {ended.map((token) => (
              <li key={token.id} className="soft">
                <div>
                  {token.name} <span>{token.role}</span>
                  <div className="note">
                    {madeBy(token)}, {day(token.createdAt)}
                  </div>
                </div>
                <div className="note">
                  {token.lastUsedAt ? `last used ${day(token.lastUsedAt)}` : 'never used'}
                </div>
                <div className="note">ended {day(token.endedAt ?? token.createdAt)}</div>
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </>
  )
}

function madeBy({ createdByName }: Token): string {
  return createdByName === '' ? 'made on the command line' : `made by ${createdByName}`
}
