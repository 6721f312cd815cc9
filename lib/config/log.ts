import 'server-only'
import { AsyncLocalStorage } from 'node:async_hooks'
import { now } from './clock'
import { getSettings, type LogLevel } from './environment'

export type LogFields = Readonly<Record<string, unknown>>

/** The request on whose behalf something runs. The server's bundles hold several copies of this module, so it lives with the process. */
const PLACE = Symbol.for('bendworthy.request-id')
const process_ = globalThis as { [PLACE]?: AsyncLocalStorage<string> }
process_[PLACE] ??= new AsyncLocalStorage<string>()
const requestIds = process_[PLACE]

/** Lines that are written from here on, by whatever this leads to, name the request. */
export function enterRequest(requestId: string): void {
  requestIds.enterWith(requestId)
}

const RANK: Readonly<Record<LogLevel, number>> = { debug: 0, info: 1, warn: 2, error: 3 }

/**
 * The log: one JSON object per line on standard error, so that programs can read it and standard output stays free.
 * Fields never hold passwords, tokens or the text of a design.
 */
export const log = {
  debug: (event: string, fields?: LogFields) => write('debug', event, fields),
  info: (event: string, fields?: LogFields) => write('info', event, fields),
  warn: (event: string, fields?: LogFields) => write('warn', event, fields),
  error: (event: string, fields?: LogFields) => write('error', event, fields),
}

function write(level: LogLevel, event: string, fields: LogFields = {}): void {
  if (RANK[level] < RANK[getSettings().logLevel]) return
  const requestId = requestIds.getStore()
  const named = requestId === undefined ? fields : { requestId, ...fields }
  process.stderr.write(`${formatLogLine(now(), level, event, named)}\n`)
}

/** One line of the log. Errors become their name, message, code and stack; what JSON cannot hold becomes text. */
export function formatLogLine(at: Date, level: LogLevel, event: string, fields: LogFields): string {
  const seen = new Set<object>()
  return JSON.stringify({ at: at.toISOString(), level, event, ...fields }, (_key, value: unknown) => {
    if (typeof value === 'bigint') return value.toString()
    if (value instanceof Error) {
      const code = 'code' in value ? { code: value.code } : {}
      return { name: value.name, message: value.message, ...code, stack: value.stack }
    }
    if (typeof value === 'object' && value !== null) {
      if (seen.has(value)) return '[seen above]'
      seen.add(value)
    }
    return value
  })
}
