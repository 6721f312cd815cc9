import type { ProjectRole, ProposalState, WaiverView } from '@/lib/data'
import type { CompanyRole } from '@/lib/review'

/** How the application's own words read on screen. Stages and verdicts have theirs beside their marks. */
export const ROLE_WORDS: Record<ProjectRole, string> = {
  member: 'member',
  lead: 'lead engineer',
  quality: 'quality',
  fabricator: 'fabricator',
  observer: 'observer',
  auditor: 'auditor',
}

export const COMPANY_ROLE_WORDS: Record<CompanyRole, string> = {
  administrator: 'administrator',
  'sheet-writer': 'sheet writer',
  member: 'member',
}

export { ANSWER_WORDS, STAGE_LABELS as STAGE_WORDS } from '@/lib/review'

export const WAIVER_WORDS: Record<WaiverView['state'], string> = {
  proposed: 'proposed, waiting for approval',
  approved: 'approved',
  declined: 'declined',
}

export const PROPOSAL_WORDS: Record<ProposalState, string> = {
  proposed: 'waiting for a decision',
  accepted: 'accepted',
  declined: 'declined',
  withdrawn: 'withdrawn',
}
