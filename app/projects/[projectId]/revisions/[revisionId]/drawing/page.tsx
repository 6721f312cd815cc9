import { DrawingScreen } from '@/app/_components/engineering'
import { DrawingGaps } from '@/app/_components/review/drawing-gaps'
import { computeOrNotFound } from '@/app/_components/shell/require-actor'
import { paths } from '@/lib/addresses'
import { getSheetIdentity } from '@/lib/data'
import { prepareFolding } from '@/lib/engine/folding'
import { findDrawingGaps } from '@/lib/review'
import { loadRevision, type RevisionParams } from '../load-revision'

export default async function DrawingPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const { zones, bends } = revision.evaluation
  const isFoldable = prepareFolding(revision.design, zones, bends).kind === 'foldable'
  const identity = await computeOrNotFound(actor, () => getSheetIdentity(actor, revisionId))
  return (
    <>
      <DrawingScreen
        design={revision.design}
        evaluation={revision.evaluation}
        identity={identity}
        pdfPath={paths.drawingPdf(revisionId)}
        svgPathOf={paths.drawingSvg(revisionId)}
        foldedPaths={
          isFoldable
            ? {
                bodies: paths.foldedBodies(revisionId),
                step: paths.foldedStep(revisionId),
                flatStep: paths.flatStep(revisionId),
              }
            : null
        }
        paperPaths={{ a4: paths.paperModel(revisionId, 'a4'), letter: paths.paperModel(revisionId, 'letter') }}
      />
      <DrawingGaps projectId={projectId} revisionId={revisionId} gaps={findDrawingGaps(revision.design)} />
    </>
  )
}
