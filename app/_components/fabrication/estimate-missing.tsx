import Link from 'next/link'
import { paths } from '@/lib/addresses'
import type { FabricatorEstimateView } from '@/lib/data'

interface EstimateMissingProps {
  readonly projectId: string
  readonly revisionId: string
  readonly view: FabricatorEstimateView
}

/** Not computed, with the input that is missing and where it is entered. */
export function EstimateMissing({ projectId, revisionId, view }: EstimateMissingProps) {
  if (view.estimate.ok) return null
  const { code, reason } = view.estimate
  if (code === 'no-formats' && !view.isShown) {
    return <p className="empty">{view.company.name} does not show its panel formats and rates here.</p>
  }
  return (
    <p className="empty">
      Not computed. {reason}{' '}
      {code === 'no-formats' ? (
        <Link href={paths.companyPanels(view.company.id)}>Panel formats of {view.company.name}</Link>
      ) : (
        <Link href={paths.revision(projectId, revisionId, 'features')}>Outline of the part</Link>
      )}
    </p>
  )
}
