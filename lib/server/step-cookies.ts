import 'server-only'
import { cookies } from 'next/headers'
import { decode, encode } from 'next-auth/jwt'
import { getSecrets } from '@/lib/config'
import { cookieOptions, makeCookieName } from './cookies'

/**
 * What ties two requests of one browser together for some minutes: a step of signing in that waits for the next, sealed
 * and out of reach of scripts.
 */
export type StepName = 'second-step' | 'passkey-challenge' | 'identity-link'

const STEP_SECONDS = 10 * 60

export async function keepStep(step: StepName, value: string): Promise<void> {
  const { sessionSecret: secret } = getSecrets()
  const sealed = await encode({ token: { value }, secret, salt: step, maxAge: STEP_SECONDS })
  const jar = await cookies()
  jar.set(makeCookieName(step), sealed, { ...cookieOptions(), maxAge: STEP_SECONDS })
}

export async function readStep(step: StepName): Promise<string | null> {
  const sealed = (await cookies()).get(makeCookieName(step))?.value
  if (sealed === undefined) return null
  try {
    const token = await decode({ token: sealed, secret: getSecrets().sessionSecret, salt: step })
    return typeof token?.value === 'string' ? token.value : null
  } catch {
    return null
  }
}

export async function dropStep(step: StepName): Promise<void> {
  const jar = await cookies()
  // With the attributes that it was set with: a browser keeps a secure cookie from being written over without them.
  jar.set(makeCookieName(step), '', { ...cookieOptions(), maxAge: 0 })
}
