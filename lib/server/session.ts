import 'server-only'
import { cookies } from 'next/headers'
import { getServerSession, type NextAuthOptions } from 'next-auth'
import { encode, type JWT } from 'next-auth/jwt'
import CredentialsProvider from 'next-auth/providers/credentials'
import { cache } from 'react'
import { getSecrets, getSettings, log } from '@/lib/config'
import { type Actor, authenticate, findActor, signOutEverywhere } from '@/lib/data'
import { type SignInInput, signInInput } from '@/lib/inputs'

/** A working day: who leaves a machine signed in overnight finds it signed out. */
const SESSION_SECONDS = 12 * 3600

/** What a session's token holds. The version is compared with the account's on each request. */
interface SessionToken {
  readonly userId: string
  readonly sessionVersion: number
}

/** Options of the session library. Made on first use: they need the settings, which building does not have. */
export function getAuthOptions(): NextAuthOptions {
  const isSecure = getSettings().publicUrl.startsWith('https:')
  return {
    secret: getSecrets().sessionSecret,
    session: { strategy: 'jwt', maxAge: SESSION_SECONDS },
    pages: { signIn: '/sign-in', error: '/sign-in' },
    useSecureCookies: isSecure,
    cookies: {
      sessionToken: {
        name: getCookieName(isSecure),
        options: { httpOnly: true, sameSite: 'lax', path: '/', secure: isSecure },
      },
    },
    providers: [
      CredentialsProvider({
        id: 'credentials',
        credentials: { email: {}, password: {} },
        async authorize(credentials) {
          const parsed = signInInput.safeParse({ email: credentials?.email, password: credentials?.password })
          if (!parsed.success) return null
          const outcome = await authenticate(parsed.data)
          if (outcome.ok) {
            const { userId, name, email, sessionVersion } = outcome.value
            return { id: userId, name, email, sessionVersion }
          }
          // A wrong password is the library's own refusal; whatever else stands in the way is said in words.
          if (outcome.refusal.kind === 'invalid') return null
          throw new Error(outcome.refusal.message)
        },
      }),
    ],
    callbacks: {
      jwt({ token, user }) {
        if (user === undefined || !('sessionVersion' in user)) return token
        return { ...token, userId: user.id, sessionVersion: user.sessionVersion }
      },
      session: ({ session, token }) => ({ ...session, ...readToken(token) }),
    },
    events: {
      async signOut({ token }) {
        const claims = readToken(token)
        if (claims === null) return
        const actor = await findActor(claims.userId, claims.sessionVersion)
        if (actor !== null) await signOutEverywhere(actor)
      },
    },
    logger: {
      error: (code, metadata) => log.warn('session library', { code, metadata }),
      warn: (code) => log.debug('session library', { code }),
      debug: () => {},
    },
  }
}

function getCookieName(isSecure: boolean): string {
  return isSecure ? '__Secure-bendworthy-session' : 'bendworthy-session'
}

function readToken(token: unknown): SessionToken | null {
  if (typeof token !== 'object' || token === null) return null
  const { userId, sessionVersion } = token as Partial<SessionToken>
  return typeof userId === 'string' && typeof sessionVersion === 'number' ? { userId, sessionVersion } : null
}

/**
 * Who is acting, or null for a visitor. Asks the database whether the session still counts; once per request.
 */
export const getActor = cache(async (): Promise<Actor | null> => {
  const claims = readToken(await getServerSession(getAuthOptions()))
  return claims === null ? null : findActor(claims.userId, claims.sessionVersion)
})

/** Lets the session of this browser go on after all sessions were ended: its cookie takes the new version. */
export async function renewSession(
  actor: Pick<Actor, 'userId' | 'name' | 'email'>,
  sessionVersion: number,
): Promise<void> {
  const isSecure = getSettings().publicUrl.startsWith('https:')
  const claims: JWT = { sub: actor.userId, name: actor.name, email: actor.email, userId: actor.userId, sessionVersion }
  const value = await encode({ token: claims, secret: getSecrets().sessionSecret, maxAge: SESSION_SECONDS })
  const jar = await cookies()
  jar.set(getCookieName(isSecure), value, {
    httpOnly: true,
    sameSite: 'lax',
    path: '/',
    secure: isSecure,
    maxAge: SESSION_SECONDS,
  })
}

/**
 * Signs this browser in within an action, for somebody who has just made an account: what the server renders after the
 * action is then already theirs.
 */
export async function openSession(credentials: SignInInput): Promise<void> {
  const outcome = await authenticate(credentials)
  if (outcome.ok) await renewSession(outcome.value, outcome.value.sessionVersion)
}
