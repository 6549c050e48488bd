import 'server-only'
import { betterAuth } from 'better-auth'
import { prismaAdapter } from 'better-auth/adapters/prisma'
import { APIError, createAuthMiddleware, getIP } from 'better-auth/api'
import { nextCookies } from 'better-auth/next-js'
import { db } from './db'
import { signInLimit } from './sign-in-limit'

/**
 * Hosts under which the shop's pages are reached: this machine, whatever APP_URL says, and, where the start opened
 * the shop to its network, the host of the request itself. A foreign origin is never among them.
 */
function trustedOrigins(request?: Request): string[] {
  const host = request?.headers.get('host')
  const own = host ? [`http://${host}`, `https://${host}`] : []
  return process.env.APP_URL ? [new URL(process.env.APP_URL).origin, ...own] : own
}

const signInPath = '/sign-in/email'

function open() {
  const limit = signInLimit()
  return betterAuth({
    database: prismaAdapter(db().prisma, { provider: 'postgresql' }),
    trustedOrigins: (request) => trustedOrigins(request),
    emailAndPassword: { enabled: true, disableSignUp: true, minPasswordLength: 12, maxPasswordLength: 200 },
    advanced: {
      // Said aloud: left out, the library takes an environment variable TEST for leave to skip both checks.
      disableOriginCheck: false,
      disableCSRFCheck: false,
      database: { generateId: 'uuid' },
    },
    session: { fields: { userId: 'personId' }, expiresIn: 60 * 60 * 24 * 30, updateAge: 60 * 60 * 24 },
    account: { fields: { userId: 'personId' } },
    // Our own limit stands before both doors, the form's and the route's; the library's knows the route only.
    rateLimit: { customRules: { [signInPath]: false } },
    hooks: {
      before: createAuthMiddleware(async (context) => {
        if (context.path !== signInPath) return
        const headers = context.headers ?? context.request?.headers
        const address = headers?.has('x-forwarded-for') ? getIP(headers, context.context.options) : null
        const waitS = limit.attempt(address, String(context.body?.email ?? ''), Date.now())
        if (waitS === 0) return
        throw new APIError(
          'TOO_MANY_REQUESTS',
          { message: `Too many tries to sign in. Wait ${waitS} seconds, then try again.`, waitS },
          { 'retry-after': String(waitS) },
        )
      }),
      after: createAuthMiddleware(async (context) => {
        if (context.path === signInPath && context.context.newSession) {
          limit.succeeded(String(context.body?.email ?? ''))
        }
      }),
    },
    databaseHooks: {
      session: {
        create: {
          // A leaver's name stays on the entries; the door doesn't open any more.
          before: async (session) => {
            const person = await db().prisma.person.findUnique({ where: { id: session.userId } })
            return person !== null && person.endedAt === null
          },
        },
      },
    },
    user: {
      modelName: 'person',
      additionalFields: {
        role: { type: 'string', input: false },
        initials: { type: 'string', input: false },
        endedAt: { type: 'date', input: false, required: false },
      },
    },
    plugins: [nextCookies()],
  })
}

const held = globalThis as typeof globalThis & { mouldwrightAuth?: ReturnType<typeof open> }

export function auth(): ReturnType<typeof open> {
  held.mouldwrightAuth ??= open()
  return held.mouldwrightAuth
}
