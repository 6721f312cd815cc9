import type { NextRequest } from 'next/server'
import NextAuth from 'next-auth'
import { getAuthOptions, type SignInNote } from '@/lib/server'

interface AuthContext {
  readonly params: Promise<{ nextauth: string[] }>
}

const RETRY_AFTER_SECONDS: Readonly<Partial<Record<SignInNote['status'], string>>> = { 429: '60', 503: '3' }

/** The session library's own routes: sign-in, sign-out, session. Its options are made for each request. */
async function handle(request: NextRequest, context: AuthContext): Promise<Response> {
  const note: SignInNote = { status: 401 }
  const response: Response = await NextAuth(request, context, getAuthOptions(note))
  const retryAfter = RETRY_AFTER_SECONDS[note.status]
  if (retryAfter === undefined) return response
  // The library answers 401 to whatever was refused; programs should know that they may try again.
  const headers = new Headers(response.headers)
  headers.set('retry-after', retryAfter)
  return new Response(response.body, { status: note.status, headers })
}

export { handle as GET, handle as POST }
