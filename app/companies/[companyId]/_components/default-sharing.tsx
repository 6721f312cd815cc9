import { describeSharing } from '@/app/_components/fabrication/sharing-words'
import type { Sharing } from '@/lib/review'
import { SharingForm } from './sharing-form'

/** What the company lets further projects have, until it says otherwise for one of them. */
export function DefaultSharing({ companyId, sharing }: { companyId: string; sharing: Sharing }) {
  return (
    <details>
      <summary>Further projects: {describeSharing(sharing)}</summary>
      <SharingForm companyId={companyId} sharing={sharing} seenVersion={0} />
    </details>
  )
}
