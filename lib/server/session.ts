import 'server-only'
import { cookies } from 'next/headers'
import { getServerSession, type NextAuthOptions } from 'next-auth'
import { encode, type JWT } from 'next-auth/jwt'
import CredentialsProvider from 'next-auth/providers/credentials'
import { cache } from 'react'
import { getSecrets, getSettings, log } from '@/lib/config'
import { type Actor, authenticate, findActor, type Outcome, SESSION_SECONDS, type SignedIn, signOut } from '@/lib/data'
import { makeOwnPath, signInInput } from '@/lib/inputs'
import { cookieOptions, makeCookieName } from './cookies'
import { rememberDevice } from './known-device'
import { getVisit } from './visit'

const COOKIE_NAME = 'session'

/** What the answer to a sign-in has to say beside what the session library says. */
export interface SignInNote {
  /** Status of the answer where the library's own (401) would be wrong. */
  status: 401 | 429 | 503
}

/**
 * Options of the session library. Made for each request: they need the settings, which building does not have.
 *
 * The library seals the cookie and runs the sign-ins; what the cookie holds is the id of a session's row, which is asked
 * on each request, so that ending a session needs nothing from the browser.
 */
export function getAuthOptions(note: SignInNote = { status: 401 }): NextAuthOptions {
  const { publicUrl } = getSettings()
  return {
    secret: getSecrets().sessionSecret,
    session: { strategy: 'jwt', maxAge: SESSION_SECONDS },
    pages: { signIn: '/sign-in', error: '/sign-in' },
    useSecureCookies: publicUrl.startsWith('https:'),
    cookies: { sessionToken: { name: makeCookieName(COOKIE_NAME), options: cookieOptions() } },
    providers: [
      CredentialsProvider({
        id: 'credentials',
        credentials: { email: {}, password: {} },
        async authorize(credentials) {
          const parsed = signInInput.safeParse({ email: credentials?.email, password: credentials?.password })
          if (!parsed.success) return null
          return settle(await authenticate(parsed.data, await getVisit()), note)
        },
      }),
    ],
    callbacks: {
      jwt({ token, user }) {
        if (user === undefined || !('sessionId' in user)) return token
        return { ...token, sessionId: user.sessionId }
      },
      session: ({ session, token }) => ({ ...session, sessionId: readSessionId(token) }),
      redirect: ({ url, baseUrl }) => new URL(makeOwnPath(url, baseUrl) ?? '/', baseUrl).href,
    },
    events: {
      async signOut({ token }) {
        const sessionId = readSessionId(token)
        if (sessionId !== null) await signOut(sessionId)
      },
    },
    logger: {
      error: (code, metadata) => log.warn('session library', { code, metadata }),
      warn: (code) => log.debug('session library', { code }),
      debug: () => {},
    },
  }
}

/** What the session library is told of a sign-in: somebody, nobody, or a sentence why not. */
async function settle(outcome: Outcome<SignedIn>, note: SignInNote) {
  if (outcome.ok) {
    const { userId, name, email, sessionId } = outcome.value
    await rememberDevice(userId)
    return { id: userId, name, email, sessionId }
  }
  const { refusal } = outcome
  // A wrong password is the library's own refusal; whatever else stands in the way is said in words.
  if (refusal.kind === 'invalid') return null
  if (refusal.kind === 'busy') note.status = 503
  if (refusal.kind === 'too-many') note.status = 429
  throw new Error(refusal.message)
}

function readSessionId(token: unknown): string | null {
  if (typeof token !== 'object' || token === null || !('sessionId' in token)) return null
  return typeof token.sessionId === 'string' ? token.sessionId : null
}

/**
 * Who is acting, or null for a visitor. Asks the database whether the session still counts; once per request.
 */
export const getActor = cache(async (): Promise<Actor | null> => {
  const sessionId = readSessionId(await getServerSession(getAuthOptions()))
  return sessionId === null ? null : findActor(sessionId, await getVisit())
})

/**
 * Gives this browser the session of somebody who has just made an account, within the action that made it: what the
 * server renders after the action is then already theirs.
 */
export async function keepSession({ userId, name, email, sessionId }: SignedIn): Promise<void> {
  const claims: JWT = { sub: userId, name, email, sessionId }
  const value = await encode({ token: claims, secret: getSecrets().sessionSecret, maxAge: SESSION_SECONDS })
  const jar = await cookies()
  jar.set(makeCookieName(COOKIE_NAME), value, { ...cookieOptions(), maxAge: SESSION_SECONDS })
  await rememberDevice(userId)
}
