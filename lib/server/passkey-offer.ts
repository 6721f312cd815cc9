import 'server-only'
import { makePasskeyChallenge } from '@/lib/data'
import { keepStep } from './step-cookies'

/** A challenge for this browser; the browser passes it to the authenticator, and only this browser can answer it. */
export async function offerPasskeySignIn(): Promise<Response> {
  const { challenge, options } = await makePasskeyChallenge()
  await keepStep('passkey-challenge', challenge)
  return Response.json(options, { headers: { 'cache-control': 'no-store' } })
}
