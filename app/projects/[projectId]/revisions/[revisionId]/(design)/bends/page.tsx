import { BendsScreen } from '@/app/_components/engineering'
import { loadRevision, type RevisionParams } from '../../load-revision'
import { toStoredRevision } from '../../to-stored-revision'
import { saveDesign } from '../construction/actions'

export default async function BendsPage({
  params,
  searchParams,
}: RevisionParams & { searchParams: Promise<{ bend?: string | string[]; remedies?: string | string[] }> }) {
  const [{ projectId, revisionId }, { bend, remedies }] = await Promise.all([params, searchParams])
  const { revision } = await loadRevision(projectId, revisionId)
  return (
    <BendsScreen
      stored={toStoredRevision(revision)}
      saveAction={saveDesign}
      areRemediesWanted={remedies === '1'}
      initialBendId={typeof bend === 'string' ? bend : null}
    />
  )
}
