import 'server-only'

/** More special names first: most browsers also call themselves by the names of others. */
const BROWSERS = [
  [/\bEdgA?\//, 'Edge'],
  [/\bOPR\//, 'Opera'],
  [/\bFirefox\/|\bFxiOS\//, 'Firefox'],
  [/\bChrome\/|\bCriOS\/|\bChromium\//, 'Chrome'],
  [/\bSafari\//, 'Safari'],
] as const

const SYSTEMS = [
  [/\biPhone|iPad\b/, 'iOS'],
  [/\bAndroid\b/, 'Android'],
  [/\bWindows\b/, 'Windows'],
  [/\bMac OS X\b|\bMacintosh\b/, 'macOS'],
  [/\bCrOS\b/, 'ChromeOS'],
  [/\bLinux\b/, 'Linux'],
] as const

/** What a browser says that it is, short enough for a list: `Firefox on Linux`. It may lie; nothing rests on it. */
export function nameDevice(userAgent: string): string {
  const browser = BROWSERS.find(([pattern]) => pattern.test(userAgent))?.[1]
  const system = SYSTEMS.find(([pattern]) => pattern.test(userAgent))?.[1]
  if (browser === undefined && system === undefined) return 'an unknown program'
  return `${browser ?? 'A browser'}${system === undefined ? '' : ` on ${system}`}`
}
