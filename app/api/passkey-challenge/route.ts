import { offerPasskeySignIn, visitorRoute } from '@/lib/server'

export const POST = visitorRoute(offerPasskeySignIn)
