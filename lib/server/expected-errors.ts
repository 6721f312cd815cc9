import 'server-only'
import { randomBytes } from 'node:crypto'
import { log } from '@/lib/config'
import { NotAllowedError, NotFoundError, RefusalError, WriteConflictError } from '@/lib/data'
import type { Issue } from '@/lib/engine/results'
import { DOOR_TEXTS } from '@/lib/inputs'
import { NoTurnError } from './fair-turns'
import type { ServerRefusal } from './refusal'

export const SIGNED_OUT: ServerRefusal = {
  kind: 'signed-out',
  message: DOOR_TEXTS.signedOut,
}

/** An expected error in its words; anything else is logged under an id that the person can quote. */
export function explainError(error: unknown, doing: string): ServerRefusal {
  if (error instanceof NotFoundError) return { kind: 'not-found', message: error.message }
  if (error instanceof NotAllowedError) return { kind: 'not-allowed', message: error.message }
  if (error instanceof WriteConflictError) return { kind: 'clash', message: error.message, issues: [] }
  if (error instanceof RefusalError || error instanceof NoTurnError) return error.refusal
  const errorId = randomBytes(5).toString('hex')
  log.error('unexpected error', { errorId, doing, error })
  return {
    kind: 'unexpected',
    message: `Something went wrong and nothing was changed. The administrator of this installation can find it in the log as ${errorId}.`,
    errorId,
  }
}

interface SchemaIssue {
  readonly code: string
  readonly path: readonly PropertyKey[]
  readonly message: string
}

export function explainInput(issues: readonly SchemaIssue[]): ServerRefusal {
  return {
    kind: 'invalid',
    message: 'Some of the entries are not valid.',
    issues: issues.map(
      ({ code, path, message }): Issue => ({
        code: code.replaceAll('_', '-'),
        path: path.map((key) => (typeof key === 'symbol' ? String(key) : key)),
        message,
      }),
    ),
  }
}
