import type { ReactNode } from 'react'

interface NoticeProps {
  tone?: 'plain' | 'refused' | 'caution' | 'done'
  /** `alert` interrupts, `status` waits: use alert for refusals that answer an act. */
  role?: 'alert' | 'status'
  children: ReactNode
}

export function Notice({ tone = 'plain', role, children }: NoticeProps) {
  return (
    <div className="notice" data-tone={tone} role={role}>
      {children}
    </div>
  )
}

/** Says what is absent and what to do about it. */
export function EmptyState({ children }: { children: ReactNode }) {
  return <div className="empty">{children}</div>
}

interface StaleNoticeProps {
  /** Who changed what meanwhile, in words. */
  children: ReactNode
  /** The act that shows the present state; what was typed stays until then. */
  action?: ReactNode
}

/** Something on this screen is older than what is stored. */
export function StaleNotice({ children, action }: StaleNoticeProps) {
  return (
    <div className="notice" data-tone="caution" role="alert">
      <p>
        <strong>Changed meanwhile.</strong> {children}
      </p>
      {action !== undefined && <div className="row above">{action}</div>}
    </div>
  )
}
