import type { NextRequest } from 'next/server'
import NextAuth from 'next-auth'
import { getAuthOptions } from '@/lib/server'

interface AuthContext {
  readonly params: Promise<{ nextauth: string[] }>
}

/** The session library's own routes: sign-in, sign-out, session. Its options are made on the first request. */
function handle(request: NextRequest, context: AuthContext): Promise<Response> {
  return NextAuth(request, context, getAuthOptions())
}

export { handle as GET, handle as POST }
