import 'server-only'

/** These hold a secret in their last part, which no log keeps. */
const WITH_TOKEN = /^\/(invitation|reset-password|confirm-address)\/.+/

/** The path alone: a query may hold what somebody looks for. */
export function nameAddress(url: string): string {
  const path = (url.split('?')[0] ?? '').replace(/^https?:\/\/[^/]*/, '')
  return path.replace(WITH_TOKEN, '/$1/***')
}
