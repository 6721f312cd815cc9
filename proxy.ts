import { type NextRequest, NextResponse } from 'next/server'
import { getTransportHeaders, makeNonce, makePagePolicy, NONCE_HEADER, refuseAtDoor } from '@/lib/server'

/** Runs before every page, action and route, except for files of the build and for uploads, which read nothing unasked. */
export const config = { matcher: '/((?!_next/static/|api/uploads/).*)' }

export async function proxy(request: NextRequest): Promise<Response> {
  const refusal = await refuseAtDoor(request)
  if (refusal !== null) return refusal
  // Routes answer with files and data: their own policy lets nothing run, and the page's must not replace it.
  if (request.nextUrl.pathname.startsWith('/api/')) return NextResponse.next({ headers: getTransportHeaders() })

  const nonce = makeNonce()
  // biome-ignore lint/style/noProcessEnv: a word of the framework that it fills in while it builds, and no setting
  const policy = makePagePolicy(nonce, process.env.NODE_ENV === 'development')
  const headers = new Headers(request.headers)
  headers.set(NONCE_HEADER, nonce)
  // The framework takes the nonce for its own scripts from here.
  headers.set('content-security-policy', policy)
  const response = NextResponse.next({ request: { headers } })
  response.headers.set('content-security-policy', policy)
  for (const [name, value] of Object.entries(getTransportHeaders())) response.headers.set(name, value)
  return response
}
