/**
 * Where a redirect may lead that somebody else asked for: to an address of this application, and nowhere else.
 *
 * Read by the same parser as the browser's (WHATWG URL), which drops tabs and line ends and takes a backslash for a slash,
 * and compared by origin: patterns on the text miss what the parser makes of it.
 *
 * @param asked  an address, whole or from the root on; not trusted
 * @param origin  of this application; any will do where only paths are to be followed
 * @returns path, query and fragment, or null
 */
export function makeOwnPath(asked: unknown, origin: string = ANY_ORIGIN): string | null {
  const base = new URL(origin)
  const found = resolveWithin(asked, base)
  if (found === null) return null
  const path = `${found.pathname}${found.search}${found.hash}`
  // `/.//host` is a path of ours, and written alone it would be read as another host.
  return resolveWithin(path, base)?.href === found.href ? path : null
}

const ANY_ORIGIN = 'http://this.invalid'

function resolveWithin(asked: unknown, base: URL): URL | null {
  if (typeof asked !== 'string' || !URL.canParse(asked, base)) return null
  const url = new URL(asked, base)
  return url.origin === base.origin && url.username === '' && url.password === '' ? url : null
}
