import type { JobLimits } from './kind'

// The server's bundles hold several copies of this module, and one pool serves them all: an error of another copy is known by its
// name, as `instanceof` asks here.

/** A job was ended since it took more than its kind may: nothing came of it. */
export class JobLimitError extends Error {
  constructor(
    readonly job: string,
    readonly exceeded: 'time' | 'memory',
    readonly limits: JobLimits,
  ) {
    super(
      exceeded === 'time'
        ? `It took longer than ${limits.seconds} s, which is the most that the server spends on it.`
        : `It needed more than ${limits.memoryMib} MiB of memory, which is the most that the server spends on it.`,
    )
    this.name = 'JobLimitError'
  }

  static override [Symbol.hasInstance](error: unknown): error is JobLimitError {
    return error instanceof Error && error.name === 'JobLimitError'
  }
}

/** The person who asked for the job stopped it. */
export class JobStoppedError extends Error {
  constructor(readonly job: string) {
    super(`The job "${job}" was stopped.`)
    this.name = 'JobStoppedError'
  }

  static override [Symbol.hasInstance](error: unknown): error is JobStoppedError {
    return error instanceof Error && error.name === 'JobStoppedError'
  }
}

/** The thread ended without an answer and without exceeding a limit. */
export class JobCrashedError extends Error {
  constructor(job: string, options?: ErrorOptions & { readonly exitCode?: number }) {
    super(`The thread that ran the job "${job}" ended early${describeExit(options?.exitCode)}.`, options)
    this.name = 'JobCrashedError'
  }
}

const describeExit = (exitCode: number | undefined): string =>
  exitCode === undefined ? '' : ` (exit code ${exitCode})`

/** An error as plain data: threads hand over no classes. */
export interface ErrorReport {
  readonly name: string
  readonly message: string
  readonly stack: string
}

export function reportError(thrown: unknown): ErrorReport {
  const { name, message, stack = '' } = thrown instanceof Error ? thrown : new Error(String(thrown))
  return { name, message, stack }
}

const ERRORS: Readonly<Record<string, new (message: string) => Error>> = { RangeError, TypeError, SyntaxError }

export function restoreError({ name, message, stack }: ErrorReport): Error {
  const error = new (ERRORS[name] ?? Error)(message)
  // Where it happened, rather than where it was handed on.
  if (stack !== '') error.stack = stack
  return error
}
