import 'server-only'
import { cookies } from 'next/headers'
import { getServerSession, type NextAuthOptions, type Profile } from 'next-auth'
import { decode, encode, type JWT } from 'next-auth/jwt'
import { cache } from 'react'
import { paths } from '@/lib/addresses'
import { getSecrets, getSettings, log } from '@/lib/config'
import {
  type Actor,
  findActor,
  finishIdentityLink,
  SESSION_SECONDS,
  type SignedIn,
  signInByIdentity,
  signOut,
} from '@/lib/data'
import { makeOwnPath } from '@/lib/inputs'
import { cookieOptions, makeCookieName } from './cookies'
import { rememberDevice } from './known-device'
import {
  listProviders,
  OIDC_PROVIDER,
  readIdentity,
  SECOND_STEP,
  type SignInNote,
  withoutRawErrors,
} from './sign-in-providers'
import { dropStep, keepStep, readStep } from './step-cookies'
import { getVisit } from './visit'

const COOKIE_NAME = 'session'

/**
 * Options of the session library. Made for each request: they need the settings, which building does not have.
 *
 * The library seals the cookie and runs the sign-ins; what the cookie holds is the id of a session's row, which is asked
 * on each request, so that ending a session needs nothing from the browser.
 */
export function getAuthOptions(note: SignInNote = { status: 401 }): NextAuthOptions {
  const { publicUrl } = getSettings()
  /** Of a sign-in by the provider, between two callbacks of one request. */
  let byProvider: SignedIn | null = null
  return {
    secret: getSecrets().sessionSecret,
    session: { strategy: 'jwt', maxAge: SESSION_SECONDS },
    pages: { signIn: paths.signIn(), error: paths.signIn() },
    useSecureCookies: publicUrl.startsWith('https:'),
    cookies: { sessionToken: { name: makeCookieName(COOKIE_NAME), options: cookieOptions() } },
    providers: listProviders(note),
    callbacks: {
      async signIn({ account, profile }) {
        if (account?.provider !== OIDC_PROVIDER) return true
        const answer = await withoutRawErrors(() => receiveIdentity(profile))
        if (typeof answer === 'string') return answer
        byProvider = answer
        return true
      },
      async jwt({ token, user }) {
        if (byProvider !== null) {
          await endEarlierSession()
          const { userId, name, email, sessionId } = byProvider
          return { sub: userId, name, email, sessionId }
        }
        if (user === undefined || !('sessionId' in user)) return token
        await endEarlierSession()
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

/** What is done with an identity that the provider vouches for: it is joined to an account, or signs in, or is turned away. */
async function receiveIdentity(profile: Profile | undefined): Promise<SignedIn | string> {
  const identity = readIdentity(profile)
  if (identity === null) return paths.signInAfterProvider('failed')
  const linkToken = await readStep('identity-link')
  if (linkToken !== null) {
    await dropStep('identity-link')
    const actor = await getActor()
    if (actor === null) return paths.signInAfterProvider('failed')
    const result = await finishIdentityLink(actor, { token: linkToken, identity })
    return paths.account(result.ok)
  }
  const result = await signInByIdentity(identity, await getVisit())
  if (!result.ok) return paths.signInAfterProvider('not-joined')
  if ('secondStep' in result.value) {
    await keepStep(SECOND_STEP, result.value.secondStep)
    return paths.signInAfterProvider('code-wanted')
  }
  await rememberDevice(result.value.userId)
  return result.value
}

/** A browser has one session: the person who signs in again leaves no earlier one behind that a copy of its cookie could use. */
async function endEarlierSession(): Promise<void> {
  const token = (await cookies()).get(makeCookieName(COOKIE_NAME))?.value
  if (token === undefined) return
  // A cookie that was not sealed here is none.
  const claims = await decode({ token, secret: getSecrets().sessionSecret }).catch(() => null)
  const sessionId = readSessionId(claims)
  if (sessionId !== null) await signOut(sessionId)
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
  await endEarlierSession()
  const claims: JWT = { sub: userId, name, email, sessionId }
  const value = await encode({ token: claims, secret: getSecrets().sessionSecret, maxAge: SESSION_SECONDS })
  const jar = await cookies()
  jar.set(makeCookieName(COOKIE_NAME), value, { ...cookieOptions(), maxAge: SESSION_SECONDS })
  await rememberDevice(userId)
}
