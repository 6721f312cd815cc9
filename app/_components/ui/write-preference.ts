const ONE_YEAR_SECONDS = 31_536_000

/** Stores a display preference in a cookie that the server reads; nothing else is kept there. */
export function writePreference(name: string, value: string): void {
  // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store interface is absent outside secure contexts and from some browsers.
  document.cookie = `${name}=${value}; path=/; max-age=${ONE_YEAR_SECONDS}; samesite=lax`
}
