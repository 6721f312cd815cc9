'use client'

import { type ReactNode, useEffect, useRef } from 'react'
import { formatIssuePath } from '@/lib/engine/results'
import { getIssues, type ShownRefusal } from './action-result'
import { Timestamp } from './timestamp'

interface FormErrorProps {
  refusal: ShownRefusal | null
  /** Shown for `blocked`: the list of causes with their links. */
  renderBlockers?: (refusal: Extract<ShownRefusal, { kind: 'blocked' }>) => ReactNode
}

/** Why the server refused, in one place; takes the focus, so that a keyboard or screen reader lands on it. */
export function FormError({ refusal, renderBlockers }: FormErrorProps) {
  const box = useRef<HTMLDivElement>(null)
  useEffect(() => {
    if (refusal !== null) box.current?.focus()
  }, [refusal])
  if (refusal === null) return null
  const issues = getIssues(refusal)
  return (
    <div ref={box} className="notice" data-tone="refused" role="alert" tabIndex={-1}>
      <p>{refusal.message}</p>
      {issues.length > 0 && (
        <ul>
          {issues.map((issue) => (
            <li key={`${formatIssuePath(issue.path)} ${issue.message}`}>
              {issue.path.length > 0 && <code>{formatIssuePath(issue.path)}</code>} {issue.message}
            </li>
          ))}
        </ul>
      )}
      {refusal.kind === 'stale' && (
        <ul>
          {refusal.changes.map((change) => (
            <li key={`${change.at} ${change.by}`}>
              {change.by}, <Timestamp at={change.at} />: {change.what.join('; ')}
            </li>
          ))}
        </ul>
      )}
      {refusal.kind === 'blocked' &&
        (renderBlockers === undefined ? (
          <ul>
            {refusal.blockers.map((blocker) => (
              <li key={`${blocker.code} ${blocker.sentence}`}>{blocker.sentence}</li>
            ))}
          </ul>
        ) : (
          renderBlockers(refusal)
        ))}
      {refusal.kind === 'unexpected' && (
        <p className="small">
          Reference for the administrator of this installation: <code>{refusal.errorId}</code>
        </p>
      )}
    </div>
  )
}
