import 'server-only'
import type { AuthenticationResponseJSON } from '@simplewebauthn/server'
import type { Profile } from 'next-auth'
import CredentialsProvider from 'next-auth/providers/credentials'
import type { OAuthConfig, Provider } from 'next-auth/providers/index'
import { getSettings } from '@/lib/config'
import {
  type ActResult,
  authenticate,
  finishSecondStep,
  type SecondStep,
  type SignedIn,
  signInByPasskey,
} from '@/lib/data'
import { emailSchema, type ProvidedIdentity, passkeyAnswerInput, secondStepInput, signInInput } from '@/lib/inputs'
import { explainError } from './expected-errors'
import { rememberDevice } from './known-device'
import { dropStep, keepStep, readStep } from './step-cookies'
import { getVisit } from './visit'

/** What the answer to a sign-in has to say beside what the session library says. */
export interface SignInNote {
  /** Status of the answer where the library's own (401) would be wrong. */
  status: 401 | 429 | 503
}

/** The word by which the sign-in page learns that a code or passkey is still to come. */
export const SECOND_STEP = 'second-step'
export const OIDC_PROVIDER = 'oidc'

/** The ways to sign in, each a provider of the session library. */
export function listProviders(note: SignInNote): Provider[] {
  return [
    CredentialsProvider({
      id: 'credentials',
      credentials: { email: {}, password: {} },
      async authorize(credentials) {
        const parsed = signInInput.safeParse({ email: credentials?.email, password: credentials?.password })
        return parsed.success ? settle(async () => authenticate(parsed.data, await getVisit()), note) : null
      },
    }),
    CredentialsProvider({
      id: SECOND_STEP,
      credentials: { code: {} },
      async authorize(credentials) {
        const parsed = secondStepInput.safeParse({ token: await readStep(SECOND_STEP), code: credentials?.code })
        return parsed.success ? settle(async () => finishSecondStep(parsed.data, await getVisit()), note) : null
      },
    }),
    CredentialsProvider({
      id: 'passkey',
      credentials: { answer: {} },
      async authorize(credentials) {
        const challenge = await readStep('passkey-challenge')
        const parsed = passkeyAnswerInput.safeParse(parseJson(credentials?.answer))
        if (challenge === null || !parsed.success) return null
        await dropStep('passkey-challenge')
        const response = parsed.data as unknown as AuthenticationResponseJSON
        return settle(async () => signInByPasskey({ challenge, response }, await getVisit()), note)
      },
    }),
    ...listOidcProviders(),
  ]
}

/** What the session library is told of a sign-in: somebody, nobody, or a sentence why not. */
export async function settle(run: () => Promise<ActResult<SignedIn | SecondStep>>, note: SignInNote) {
  const result = await withoutRawErrors(run)
  if (result.ok) {
    if ('secondStep' in result.value) {
      await keepStep(SECOND_STEP, result.value.secondStep)
      throw new Error(SECOND_STEP)
    }
    const { userId, name, email, sessionId } = result.value
    await dropStep(SECOND_STEP)
    await rememberDevice(userId)
    return { id: userId, name, email, sessionId }
  }
  const { refusal } = result
  // A wrong password is the library's own refusal; any other obstacle is explained in words.
  if (refusal.kind === 'invalid') return null
  if (refusal.kind === 'busy') note.status = 503
  if (refusal.kind === 'too-many') note.status = 429
  throw new Error(refusal.message)
}

/** The library puts the message of whatever is thrown into an address: what a database says must not stand there. */
export async function withoutRawErrors<T>(run: () => Promise<T>): Promise<T> {
  try {
    return await run()
  } catch (error) {
    throw new Error(explainError(error, 'signing in').message)
  }
}

function parseJson(text: unknown): unknown {
  if (typeof text !== 'string' || text.length > 20_000) return null
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

/** OpenID Connect by the session library itself: code flow with PKCE, state and nonce, the ID token checked. */
function listOidcProviders(): OAuthConfig<OidcProfile>[] {
  const { oidc } = getSettings()
  if (oidc === null) return []
  return [
    {
      id: OIDC_PROVIDER,
      name: oidc.name,
      type: 'oauth',
      issuer: oidc.issuer,
      wellKnown: `${oidc.issuer.replace(/\/$/, '')}/.well-known/openid-configuration`,
      authorization: { params: { scope: 'openid email profile' } },
      clientId: oidc.clientId,
      clientSecret: oidc.clientSecret,
      idToken: true,
      checks: ['pkce', 'state', 'nonce'],
      profile: (profile) => ({ id: profile.sub, name: profile.name ?? null, email: profile.email ?? null }),
    },
  ]
}

interface OidcProfile {
  readonly iss: string
  readonly sub: string
  readonly name?: string
  readonly email?: string
  readonly email_verified?: unknown
}

/** From the claims of an ID token that the session library has checked. Null where they name nobody. */
export function readIdentity(profile: Profile | undefined): ProvidedIdentity | null {
  const { oidc } = getSettings()
  if (oidc === null || profile === undefined) return null
  const { sub, email, email_verified: verified } = profile as Partial<OidcProfile>
  if (typeof sub !== 'string' || sub === '') return null
  const parsed = emailSchema.safeParse(email)
  return {
    issuer: oidc.issuer,
    subject: sub,
    email: parsed.success ? parsed.data : '',
    // OpenID Connect Core 1.0, 5.1: a boolean. A text that says "true" is not one.
    isEmailVerified: parsed.success && verified === true,
  }
}
