// @ts-check
import { connect, createServer } from 'node:net'
import { portForbidden, portTaken, Trouble } from './messages.js'

/** A port on the loopback address that nobody uses at this moment. @returns {Promise<number>} */
export function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer()
    server.on('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      const port = typeof address === 'object' && address !== null ? address.port : 0
      server.close(() => resolve(port))
    })
  })
}

/**
 * Refuses a port that is in use, or that this account may not open. Asked before the long work.
 * @param {number} port @param {string} host the address to listen on
 * @throws {Trouble}
 */
export async function checkPort(port, host) {
  const answers = await Promise.all(['127.0.0.1', '::1'].map((address) => somebodyAnswers(port, address)))
  if (answers.includes(true)) throw new Trouble(portTaken(port))
  const code = await listenError(port, host)
  if (code === 'EADDRINUSE') throw new Trouble(portTaken(port))
  if (code === 'EACCES') throw new Trouble(portForbidden(port))
  if (code !== null) throw new Trouble(`Port ${port} can't be opened on ${host} (${code}).`)
}

/** @param {number} port @param {string} host @returns {Promise<string | null>} */
function listenError(port, host) {
  return new Promise((resolve) => {
    const server = createServer()
    server.on('error', (/** @type {NodeJS.ErrnoException} */ error) => resolve(error.code ?? error.message))
    server.listen(port, host, () => server.close(() => resolve(null)))
  })
}

/** @param {number} port @param {string} host @returns {Promise<boolean>} */
function somebodyAnswers(port, host) {
  return new Promise((resolve) => {
    const socket = connect({ port, host })
    /** @param {boolean} answer */
    const end = (answer) => {
      socket.destroy()
      resolve(answer)
    }
    socket.setTimeout(500, () => end(false))
    socket.on('connect', () => end(true))
    socket.on('error', () => end(false))
  })
}
