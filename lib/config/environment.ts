import 'server-only'
import path from 'node:path'
import { z } from 'zod'
import { isLoopbackHost } from './loopback-host'

/** The settings of this installation, read once from the environment. */
export interface Settings {
  /** Absolute path of the folder that holds the database, the secrets and uploaded files. */
  readonly dataFolder: string
  /** `file:` with an absolute path, or `postgresql:`. */
  readonly databaseUrl: string
  readonly databaseKind: DatabaseKind
  /** Address the server listens on. */
  readonly host: string
  readonly port: number
  /** How many proxies of our own stand in front: so far X-Forwarded-For is believed. */
  readonly proxyCount: number
  /** Address that people type and that invitations carry, without a slash at the end. */
  readonly publicUrl: string
  /** Whether an empty database is filled with the demo scenario. */
  readonly wantsDemoData: boolean
  /** Whether this is to be a real workspace that starts with nobody in it. */
  readonly startsEmpty: boolean
  readonly logLevel: LogLevel
  /** What the files of one project may take on disk, and those that one company's people sent. */
  readonly projectFilesMib: number
  readonly companyFilesMib: number
  /** Null where no mail server is set: invitations are then handed over as links. */
  readonly smtpUrl: string | null
  readonly mailFrom: string
  /** Of an authority for trusted time stamps (RFC 3161); null where none is asked. */
  readonly timeStampUrl: string | null
  /** File of the certificates (PEM) that are trusted for time stamps; null where none are. */
  readonly timeStampCaFile: string | null
  /** Sign-in by OpenID Connect; null where no provider is set. */
  readonly oidc: OidcSettings | null
  /** What monitoring sends to read the metrics from another machine; null where only this machine reads them. */
  readonly metricsToken: string | null
  /** How long the list of who opened what is kept. */
  readonly accessLogDays: number
  /** Whether the start program waits on the other end of standard input. */
  readonly isWrapped: boolean
}

export interface OidcSettings {
  /** As the provider writes it in its tokens. */
  readonly issuer: string
  readonly clientId: string
  readonly clientSecret: string
  /** What the button says: `Sign in with …`. */
  readonly name: string
}

export type DatabaseKind = 'sqlite' | 'postgresql'
export type LogLevel = 'debug' | 'info' | 'warn' | 'error'

/** One setting that cannot be used. */
export interface SettingProblem {
  readonly name: string
  /** What was found, with any password in it blanked. */
  readonly found: string
  readonly expected: string
}

/** Thrown when a setting cannot be used; the message has one line for each. */
export class SettingsError extends Error {
  readonly problems: readonly SettingProblem[]

  constructor(problems: readonly SettingProblem[]) {
    super(problems.map(({ name, found, expected }) => `${name} is "${found}"; expected ${expected}.`).join('\n'))
    this.name = 'SettingsError'
    this.problems = problems
  }
}

const FLAG_WORDS: Readonly<Record<string, boolean>> = {
  '1': true,
  true: true,
  yes: true,
  '0': false,
  false: false,
  no: false,
}

const flag = z
  .string()
  .transform((word) => word.toLowerCase())
  .refine((word) => word in FLAG_WORDS, '1, true, yes, 0, false or no')
  .transform((word) => FLAG_WORDS[word] === true)

const port = z
  .string()
  .regex(/^\d{1,5}$/, 'a whole number from 1 to 65535')
  .transform(Number)
  .refine((number) => number >= 1 && number <= 65535, 'a whole number from 1 to 65535')

const mebibytes = z
  .string()
  .regex(/^\d{1,7}$/, 'a whole number of MiB from 1 to 9999999')
  .transform(Number)
  .refine((number) => number >= 1, 'a whole number of MiB from 1 to 9999999')

const DATABASE_EXPECTED = 'a file: address (SQLite) or a postgresql: address with a host and a database name'

const databaseUrl = z.string().refine((text) => {
  if (/^file:.+/.test(text)) return true
  const url = parseUrl(text)
  return url !== null && isPostgres(url) && url.hostname !== '' && url.pathname.length > 1
}, DATABASE_EXPECTED)

const PUBLIC_URL_EXPECTED = 'an http: or https: address without a path, such as https://review.example.org'

const publicUrl = z
  .string()
  .refine((text) => {
    const url = parseUrl(text)
    if (url === null || !['http:', 'https:'].includes(url.protocol)) return false
    return url.pathname === '/' && url.search === '' && url.hash === '' && url.username === ''
  }, PUBLIC_URL_EXPECTED)
  .transform((text) => new URL(text).origin)

const smtpUrl = z.string().refine((text) => {
  const url = parseUrl(text)
  return url !== null && ['smtp:', 'smtps:'].includes(url.protocol) && url.hostname !== ''
}, 'an smtp: or smtps: address')

const timeStampUrl = z.string().refine((text) => {
  const url = parseUrl(text)
  return url !== null && ['http:', 'https:'].includes(url.protocol) && url.username === ''
}, 'the http: or https: address of a time-stamp authority (RFC 3161)')

const oidcIssuer = z.string().refine((text) => {
  const url = parseUrl(text)
  if (url === null || url.search !== '' || url.hash !== '' || url.username !== '') return false
  // OpenID Connect Discovery 1.0, 3: https. Plain http reaches this machine alone, for trying it out.
  return (
    url.protocol === 'https:' ||
    (url.protocol === 'http:' && ['localhost', '127.0.0.1', '[::1]'].includes(url.hostname))
  )
}, 'the https: address of an OpenID Connect provider, as it writes it itself')

const environmentSchema = z.object({
  BENDWORTHY_DATA_FOLDER: z.string().default('./data'),
  DATABASE_URL: databaseUrl.optional(),
  HOST: z
    .string()
    .regex(/^[0-9A-Za-z.:-]+$/, 'a host name or an IP address to listen on, such as 127.0.0.1')
    .default('127.0.0.1'),
  PORT: port.default(3000),
  BENDWORTHY_PUBLIC_URL: publicUrl.optional(),
  BENDWORTHY_PROXY_COUNT: z
    .string()
    .regex(/^\d$/, 'how many proxies stand in front, 0 to 9')
    .transform(Number)
    .default(0),
  BENDWORTHY_EMPTY: flag.default(false),
  BENDWORTHY_DEMO: flag.optional(),
  BENDWORTHY_LOG_LEVEL: z.enum(['debug', 'info', 'warn', 'error'], 'debug, info, warn or error').default('info'),
  // Some eighty files of the largest size for a project; a company takes part in several.
  BENDWORTHY_PROJECT_FILES_MIB: mebibytes.default(2048),
  BENDWORTHY_COMPANY_FILES_MIB: mebibytes.default(4096),
  BENDWORTHY_SMTP_URL: smtpUrl.optional(),
  BENDWORTHY_MAIL_FROM: z.email('an e-mail address').optional(),
  BENDWORTHY_TIMESTAMP_URL: timeStampUrl.optional(),
  BENDWORTHY_TIMESTAMP_CA: z.string().optional(),
  BENDWORTHY_OIDC_ISSUER: oidcIssuer.optional(),
  BENDWORTHY_OIDC_CLIENT_ID: z.string().optional(),
  BENDWORTHY_OIDC_CLIENT_SECRET: z.string().optional(),
  BENDWORTHY_METRICS_TOKEN: z.string().min(16, 'at least 16 characters that nobody guesses').optional(),
  BENDWORTHY_ACCESS_LOG_DAYS: z
    .string()
    .regex(/^[1-9]\d{0,3}$/, 'a whole number of days from 1 to 9999')
    .transform(Number)
    .default(400),
  BENDWORTHY_WRAPPED: flag.default(false),
  BENDWORTHY_OIDC_NAME: z.string().max(60, 'a name of at most 60 characters').optional(),
})

type SettingName = keyof z.infer<typeof environmentSchema>

/**
 * Turn environment variables into settings. Unset and empty mean the same.
 *
 * @param environment  such as process.env
 * @param workingFolder  what relative paths are relative to
 * @throws SettingsError  naming every setting that cannot be used, what was found and what is expected
 */
export function parseSettings(
  environment: Readonly<Record<string, string | undefined>>,
  workingFolder: string = process.cwd(),
): Settings {
  const given: Partial<Record<SettingName, string>> = {}
  for (const name of Object.keys(environmentSchema.shape) as SettingName[]) {
    const value = environment[name]?.trim()
    if (value !== undefined && value !== '') given[name] = value
  }
  const parsed = environmentSchema.safeParse(given)
  if (!parsed.success) throw new SettingsError(describeIssues(parsed.error, given))
  const values = parsed.data
  if (values.BENDWORTHY_EMPTY && values.BENDWORTHY_DEMO === true) {
    throw new SettingsError([
      {
        name: 'BENDWORTHY_DEMO',
        found: given.BENDWORTHY_DEMO ?? '',
        expected: 'no demo data while BENDWORTHY_EMPTY asks for an empty workspace',
      },
    ])
  }

  // The comment keeps the bundler from tracing the whole project as if it were imported here.
  const dataFolder = path.resolve(/* turbopackIgnore: true */ workingFolder, values.BENDWORTHY_DATA_FOLDER)
  const databaseKind = values.DATABASE_URL?.startsWith('postgres') ? 'postgresql' : 'sqlite'
  return {
    dataFolder,
    databaseUrl: absoluteDatabaseUrl(values.DATABASE_URL, dataFolder, workingFolder),
    databaseKind,
    host: values.HOST,
    port: values.PORT,
    proxyCount: values.BENDWORTHY_PROXY_COUNT,
    publicUrl: values.BENDWORTHY_PUBLIC_URL ?? `http://${hostInUrl(values.HOST)}:${values.PORT}`,
    wantsDemoData: !values.BENDWORTHY_EMPTY && values.BENDWORTHY_DEMO !== false,
    startsEmpty: values.BENDWORTHY_EMPTY,
    logLevel: values.BENDWORTHY_LOG_LEVEL,
    projectFilesMib: values.BENDWORTHY_PROJECT_FILES_MIB,
    companyFilesMib: values.BENDWORTHY_COMPANY_FILES_MIB,
    smtpUrl: values.BENDWORTHY_SMTP_URL ?? null,
    mailFrom: values.BENDWORTHY_MAIL_FROM ?? 'bendworthy@localhost',
    timeStampUrl: values.BENDWORTHY_TIMESTAMP_URL ?? null,
    timeStampCaFile:
      values.BENDWORTHY_TIMESTAMP_CA === undefined
        ? null
        : path.resolve(/* turbopackIgnore: true */ workingFolder, values.BENDWORTHY_TIMESTAMP_CA),
    oidc: readOidc(values),
    metricsToken: values.BENDWORTHY_METRICS_TOKEN ?? null,
    accessLogDays: values.BENDWORTHY_ACCESS_LOG_DAYS,
    isWrapped: values.BENDWORTHY_WRAPPED,
  }
}

/** All or nothing: a provider without a client's name and secret cannot be asked. */
function readOidc(values: z.infer<typeof environmentSchema>): OidcSettings | null {
  const { BENDWORTHY_OIDC_ISSUER: issuer, BENDWORTHY_OIDC_NAME: name } = values
  const { BENDWORTHY_OIDC_CLIENT_ID: clientId, BENDWORTHY_OIDC_CLIENT_SECRET: clientSecret } = values
  if (issuer !== undefined && clientId !== undefined && clientSecret !== undefined) {
    return { issuer, clientId, clientSecret, name: name ?? 'single sign-on' }
  }
  const given = {
    BENDWORTHY_OIDC_ISSUER: issuer,
    BENDWORTHY_OIDC_CLIENT_ID: clientId,
    BENDWORTHY_OIDC_CLIENT_SECRET: clientSecret,
  }
  const missing = Object.entries(given).filter(([, value]) => value === undefined)
  if (missing.length === 3) return null
  throw new SettingsError(
    missing.map(([setting]) => ({
      name: setting,
      found: '',
      expected: 'a value, since the other OIDC settings are set',
    })),
  )
}

let settings: Settings | undefined

/**
 * The settings of this process. Parsed on first use and not before, so that building the application needs none.
 * @throws SettingsError
 */
export function getSettings(): Settings {
  settings ??= parseSettings(process.env)
  return settings
}

/** What is worth a warning about settings that can all be used, in sentences. */
export function listSettingWarnings(
  environment: Readonly<Record<string, string | undefined>> = process.env,
  { host, publicUrl }: Pick<Settings, 'host' | 'publicUrl'> = getSettings(),
): string[] {
  const known = Object.keys(environmentSchema.shape)
  const unknown = Object.keys(environment).filter((name) => name.startsWith('BENDWORTHY_') && !known.includes(name))
  const warnings = unknown.map((name) => {
    const near = known.find((candidate) => isNear(candidate, name))
    return `${name} is not a setting of this version and has no effect${near === undefined ? '' : `; did you mean ${near}?`}`
  })
  const address = new URL(publicUrl)
  if (address.protocol === 'http:' && !(isLoopbackHost(host) && isLoopbackHost(address.hostname))) {
    warnings.push(
      'Other machines reach this server by plain HTTP: passwords and designs can be read on the way. Put a proxy with TLS in front, and set BENDWORTHY_PUBLIC_URL to its https: address (docs/running.md)',
    )
  }
  return warnings
}

/** At most two signs apart, counted as insertions, removals and changes (Levenshtein). */
function isNear(one: string, other: string): boolean {
  let row = Array.from({ length: other.length + 1 }, (_, at) => at)
  for (let i = 1; i <= one.length; i++) {
    const next = [i]
    for (let j = 1; j <= other.length; j++) {
      const change = (row[j - 1] ?? 0) + (one[i - 1] === other[j - 1] ? 0 : 1)
      next.push(Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1))
    }
    row = next
  }
  return (row.at(-1) ?? 9) <= 2
}

/** Blank the password of an address, for messages and logs. */
export function withoutPassword(address: string): string {
  return address.replace(/(\/\/[^/@:]*):[^/]*@/, '$1:***@')
}

function describeIssues(error: z.ZodError, given: Partial<Record<SettingName, string>>): SettingProblem[] {
  const problems = new Map<string, SettingProblem>()
  for (const issue of error.issues) {
    const name = String(issue.path[0])
    // A setting that breaks two rules is one problem to the person who set it.
    if (problems.has(name)) continue
    problems.set(name, { name, found: withoutPassword(given[name as SettingName] ?? ''), expected: issue.message })
  }
  return [...problems.values()]
}

function absoluteDatabaseUrl(url: string | undefined, dataFolder: string, workingFolder: string): string {
  if (url === undefined) return `file:${path.join(/* turbopackIgnore: true */ dataFolder, 'bendworthy.db')}`
  if (!url.startsWith('file:')) return url
  const file = url.slice('file:'.length).replace(/^\/\/(?=\/)/, '')
  return `file:${path.resolve(/* turbopackIgnore: true */ workingFolder, file)}`
}

function parseUrl(text: string): URL | null {
  return URL.canParse(text) ? new URL(text) : null
}

function isPostgres(url: URL): boolean {
  return url.protocol === 'postgresql:' || url.protocol === 'postgres:'
}

/** A literal IPv6 address needs brackets in a URL; an address that means "every interface" cannot be visited. */
function hostInUrl(host: string): string {
  if (host === '0.0.0.0' || host === '::') return 'localhost'
  return host.includes(':') ? `[${host}]` : host
}

/** What a program that is started from here gets to see: what this one sees, and what is given. */
export const makeEnvironment = (given: Readonly<Record<string, string>>): NodeJS.ProcessEnv => ({
  ...process.env,
  ...given,
})

/** Whether this is the built server, as people run it. */
export const isProduction = (): boolean => process.env.NODE_ENV === 'production'
