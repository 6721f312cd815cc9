import 'server-only'
import type { Issue } from '@/lib/engine/results'
import type { Blocker } from '@/lib/review'
import type { ActRefusal, ActResult, ChangeSince } from '../views'
import { isUnstorableText } from './database-errors'

/** The record does not exist, or the person may not know that it does: outsiders cannot tell which. */
export class NotFoundError extends Error {
  constructor(readonly subject: string) {
    super(`There is no such ${subject}, or it is not shared with you.`)
    this.name = 'NotFoundError'
  }
}

/** The person sees the record, and may not do this to it. */
export class NotAllowedError extends Error {
  /** @param who  who may, as a sentence */
  constructor(
    readonly act: string,
    who = '',
  ) {
    super(`You may not ${act}.${who === '' ? '' : ` ${who}`}`)
    this.name = 'NotAllowedError'
  }
}

/**
 * Carries a refusal out of a transaction, which it rolls back. `write` turns it into an ActResult; out of a read, where hardly
 * anything refuses, it comes as it is.
 */
export class RefusalError extends Error {
  constructor(readonly refusal: ActRefusal) {
    super(refusal.message)
    this.name = 'RefusalError'
  }

  /** By name: a copy of this module, in another of the server's bundles, may have thrown it (`computing`). */
  static override [Symbol.hasInstance](error: unknown): error is RefusalError {
    return error instanceof Error && error.name === 'RefusalError'
  }
}

export function refuseInvalid(issues: readonly Issue[], message = 'Some of the entries are not valid.'): never {
  throw new RefusalError({ kind: 'invalid', message, issues })
}

/** One field that cannot be used as it is. */
export function refuseField(path: string, code: string, message: string): never {
  refuseInvalid([{ code, path: [path], message }])
}

export function refuseBlocked(blockers: readonly Blocker[], message: string): never {
  throw new RefusalError({ kind: 'blocked', message, blockers })
}

export function refuseStale(
  seenVersion: number,
  currentVersion: number,
  changes: readonly ChangeSince[],
  subject: string,
): never {
  const last = changes.at(-1)
  const who = last === undefined ? 'Somebody' : last.by
  throw new RefusalError({
    kind: 'stale',
    message: `${who} changed ${subject} since you opened it (you saw version ${seenVersion}, it is now ${currentVersion}). Nothing was saved; look at the changes and try again.`,
    seenVersion,
    currentVersion,
    changes,
  })
}

/** The server is busy: nothing is wrong with what was asked. */
export function refuseBusy(message: string): never {
  throw new RefusalError({ kind: 'busy', message })
}

/** Too many attempts: the same thing may be asked again later. */
export function refuseTooMany(message: string): never {
  throw new RefusalError({ kind: 'too-many', message })
}

export function refuseClash(message: string, issues: readonly Issue[] = []): never {
  throw new RefusalError({ kind: 'clash', message, issues })
}

/** Runs a write and turns a refusal thrown inside into an ActResult; anything else goes on. */
export async function outcomeOf<T>(run: () => Promise<T>): Promise<ActResult<T>> {
  try {
    return { ok: true, value: await run() }
  } catch (error) {
    if (error instanceof RefusalError) return { ok: false, refusal: error.refusal }
    if (isUnstorableText(error)) {
      return {
        ok: false,
        refusal: { kind: 'invalid', message: 'An entry contains a character that cannot be stored.', issues: [] },
      }
    }
    throw error
  }
}
