import 'server-only'
import type { ReviewSnapshot } from '@/lib/review'

/** What a signer puts their name to. Stored with each signature word for word, so that a later wording changes none. */
export function getSigningStatement(snapshot: Pick<ReviewSnapshot, 'label' | 'projectName'>): string {
  return [
    `I have reviewed revision ${snapshot.label} of ${snapshot.projectName}: brief, construction, bends, features,`,
    'artwork, answers, waivers and recorded results. I release it for fabrication as it stands. Computed results',
    'supported my judgment and did not replace it; the contract and the current editions of the governing standards',
    'come first.',
  ].join(' ')
}
