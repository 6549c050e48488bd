// @ts-check

/** @typedef {{ address: string, family: string | number, internal: boolean }} NetworkAddress */

/**
 * The addresses at which other devices of the network reach this machine.
 * @param {Readonly<Record<string, readonly NetworkAddress[] | undefined>>} interfaces os.networkInterfaces()
 * @returns {readonly string[]}
 */
export function lanAddresses(interfaces) {
  return Object.values(interfaces)
    .flatMap((list) => list ?? [])
    .filter(({ family, internal }) => !internal && (family === 'IPv4' || family === 4))
    .map(({ address }) => address)
    .filter((address) => !address.startsWith('169.254.'))
}

/**
 * What is said once the app answers: where, and how to get in.
 * @param {object} facts
 * @param {number} facts.port
 * @param {string} facts.appUrl
 * @param {readonly string[] | null} facts.lan null: other devices are not let in
 * @param {import('./shop-state.js').ShopState} facts.state
 * @param {import('./secrets.js').Secrets} facts.secrets
 * @param {string} facts.logs
 * @param {boolean} facts.embedded
 * @returns {string}
 */
export function announcement({ port, appUrl, lan, state, secrets, logs, embedded }) {
  const own = `http://localhost:${port}`
  const lines = ['', `Mouldwright is running at ${own}`]
  if (appUrl !== own) lines.push(`and through ${appUrl} (APP_URL)`)
  if (lan !== null) lines.push(...lanLines(lan, port))
  lines.push('', ...signInLines(state, secrets, appUrl, embedded), '', `Logs: ${logs}`, 'Ctrl-C stops it.')
  return lines.join('\n')
}

/** @param {readonly string[]} lan @param {number} port */
function lanLines(lan, port) {
  if (lan.length === 0) return ['This machine has no network address, so no other device can reach it.']
  return [
    ...lan.map((address) => `On this network: http://${address}:${port}`),
    'This is plain http: anyone on the network can read and change what passes, passwords too. Use it only on a network',
    'that you trust, or put an https proxy in front and give its address as APP_URL.',
  ]
}

/**
 * @param {import('./shop-state.js').ShopState} state @param {import('./secrets.js').Secrets} secrets
 * @param {string} appUrl @param {boolean} embedded
 */
function signInLines(state, secrets, appUrl, embedded) {
  if (state.people === 0) {
    return [
      'The shop is empty. The first lead makes an account with this code, which works once:',
      `  ${secrets.firstLeadCode}   at ${appUrl}/first-lead`,
      ...(embedded ? ['To look at the demo shop instead: npm start -- --demo'] : []),
    ]
  }
  if (state.shop !== 'demo') {
    return [
      'Sign in with your account.',
      ...(secrets.formerDemoPasswords
        ? [
            'The accounts that came with the demo shop keep its passwords until new ones are set on People; until then they stand',
            'in the secrets file, under formerDemoPasswords.',
          ]
        : []),
    ]
  }
  const rows = secrets.demoPasswords ?? []
  if (rows.length === 0) {
    return [
      'This is the demo shop, and the passwords of its accounts were lost with the secrets file.',
      ...(embedded ? ['To have it put in anew: npm start -- --demo'] : []),
    ]
  }
  const width = Math.max(0, ...rows.map(({ role }) => role.length))
  const emailWidth = Math.max(0, ...rows.map(({ email }) => email.length))
  return [
    'This is the demo shop, invented from end to end. Sign in as:',
    ...rows.map((row) => `  ${row.role.padEnd(width)}  ${row.email.padEnd(emailWidth)}  ${row.password}`),
    ...(embedded ? ['To begin a shop of your own: npm start -- --empty'] : []),
  ]
}
