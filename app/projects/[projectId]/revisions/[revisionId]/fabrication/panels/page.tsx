import Link from 'next/link'
import { EstimateMissing } from '@/app/_components/fabrication/estimate-missing'
import { FabricationLinks } from '@/app/_components/fabrication/fabrication-links'
import { NestingTable } from '@/app/_components/fabrication/nesting-table'
import { PanelDownloads } from '@/app/_components/fabrication/panel-downloads'
import { PanelPicture } from '@/app/_components/fabrication/panel-pictures'
import { DEMAND_WORDS } from '@/app/_components/fabrication/rate-words'
import { computeOrNotFound } from '@/app/_components/shell/require-actor'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { type FabricatorEstimateView, getPanels } from '@/lib/data'
import { loadRevision, type RevisionParams } from '../../load-revision'

/** Parts on the panels of each fabricator with whom the revision is shared. */
export default async function PanelsPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor } = await loadRevision(projectId, revisionId)
  const { fabricators, label } = await computeOrNotFound(actor, () => getPanels(actor, revisionId))
  return (
    <>
      <FabricationLinks projectId={projectId} revisionId={revisionId} />
      {fabricators.length === 0 && (
        <p className="empty">
          This revision is not shared with a fabricator yet, so there are no panels to place the part on.{' '}
          <Link href={paths.revision(projectId, revisionId)}>Share it</Link>
        </p>
      )}
      {fabricators.map((view) => (
        <PageSection key={view.company.id} title={`Panels of ${view.company.name}`}>
          <EstimateMissing projectId={projectId} revisionId={revisionId} view={view} />
          <FabricatorPanels view={view} label={label} />
        </PageSection>
      ))}
    </>
  )
}

function FabricatorPanels({ view, label }: { view: FabricatorEstimateView; label: string }) {
  const { estimate, formatsVersion, pricedFormatId, company } = view
  if (!estimate.ok) return null
  const { traits, nested, part, partNote } = estimate
  const added = nested[0]
  return (
    <div className="stack">
      <p className="small">
        By version {formatsVersion} of its <Link href={paths.companyPanels(company.id)}>panel formats</Link>.{' '}
        {DEMAND_WORDS[traits.registration]} registration: {traits.registrationBecause}
        {added !== undefined &&
          (added.extraMarginMm > 0 || added.extraSpacingMm > 0) &&
          ` It takes ${added.extraMarginMm} mm more on each margin and ${added.extraSpacingMm} mm more between parts.`}
      </p>
      {partNote !== '' && <p className="small muted">{partNote}</p>}
      <NestingTable nested={nested} pricedFormatId={pricedFormatId} />
      <div className="panel-pictures">
        {nested.map((each) => (
          <div key={each.format.id}>
            <PanelPicture part={part} nested={each} />
            <PanelDownloads
              panel={{ part, nesting: each.nesting, format: each.format, extraMarginMm: each.extraMarginMm }}
              name={`${label} ${company.name} ${each.format.name}`}
            />
          </div>
        ))}
      </div>
      <p className="small muted">
        Counted in whole micrometres, with the full spacing between all parts; arcs are short lines, at most 0.01 mm
        outside. A denser arrangement may exist; the fabricator’s own panel, with its coupons and tooling, is what
        counts.
      </p>
    </div>
  )
}
