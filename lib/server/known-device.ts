import 'server-only'
import { randomUUID } from 'node:crypto'
import { cookies } from 'next/headers'
import { decode, encode } from 'next-auth/jwt'
import { getSecrets } from '@/lib/config'
import type { KnownDevice } from '@/lib/data'
import { cookieOptions, makeCookieName } from './cookies'

/**
 * A browser in which people have signed in carries a sealed note of who they are. It signs nobody in: guesses at the
 * password are counted apart on it, so that nobody elsewhere can lock its people out.
 */
const NAME = 'device'
const SALT = 'bendworthy-device'
const LAST_SECONDS = 180 * 86_400
const MOST_PEOPLE = 8

export async function readKnownDevice(): Promise<KnownDevice | null> {
  const value = (await cookies()).get(makeCookieName(NAME))?.value
  if (value === undefined) return null
  try {
    const token = await decode({ token: value, secret: getSecrets().sessionSecret, salt: SALT })
    const { deviceId, userIds } = token as Partial<KnownDevice>
    if (typeof deviceId !== 'string' || !Array.isArray(userIds)) return null
    return { deviceId, userIds: userIds.filter((id) => typeof id === 'string') }
  } catch {
    // Damaged, forged, or of another installation: an unknown device.
    return null
  }
}

/** After a good sign-in. */
export async function rememberDevice(userId: string): Promise<void> {
  const before = await readKnownDevice()
  const others = (before?.userIds ?? []).filter((id) => id !== userId)
  const token = { deviceId: before?.deviceId ?? randomUUID(), userIds: [userId, ...others].slice(0, MOST_PEOPLE) }
  const value = await encode({ token, secret: getSecrets().sessionSecret, salt: SALT, maxAge: LAST_SECONDS })
  const jar = await cookies()
  jar.set(makeCookieName(NAME), value, { ...cookieOptions(), maxAge: LAST_SECONDS })
}
