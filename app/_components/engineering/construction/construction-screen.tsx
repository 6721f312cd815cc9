'use client'

import { PageSection } from '@/app/_components/ui/section'
import { DraftScreen, type DraftScreenProps } from '../draft'
import '../engineering.css'
import { BendSummary } from './bend-summary'
import { ContactFinishes, CopperInZones } from './copper-in-zones'
import { CopperTable } from './copper-table'
import { type KeepAction, KeepConstruction } from './keep-construction'
import { LayersSection } from './layers-section'
import { PresenceGrid } from './presence-grid'
import { SectionDrawings } from './section-drawings'
import { ThicknessResults } from './thickness-results'
import { ThroughThickness } from './through-thickness'
import { ZoneTable } from './zone-table'

/** Construction editor beside its drawings and results. */
export function ConstructionScreen({
  stored,
  saveAction,
  keepAction,
}: DraftScreenProps & {
  /** Null for those who may not keep it for other projects. */
  readonly keepAction: KeepAction | null
}) {
  return (
    <DraftScreen stored={stored} saveAction={saveAction}>
      <div className="bench">
        <div>
          <LayersSection />
          <PageSection title="Copper">
            <CopperTable />
          </PageSection>
          <PageSection title="Zones">
            <ZoneTable />
          </PageSection>
          <PageSection title="Layers in zones">
            <PresenceGrid />
          </PageSection>
          <PageSection title="Plating and hatch by zone">
            <CopperInZones />
            <ContactFinishes />
          </PageSection>
          <PageSection title="Measured through the thickness">
            <ThroughThickness />
          </PageSection>
          {keepAction !== null && (
            <PageSection title="For other projects">
              <KeepConstruction keepAction={keepAction} />
            </PageSection>
          )}
        </div>
        <div className="bench-results">
          <PageSection title="Bends in this construction">
            <BendSummary />
          </PageSection>
          <PageSection title="Sections">
            <SectionDrawings />
          </PageSection>
          <PageSection title="Thickness">
            <ThicknessResults />
          </PageSection>
        </div>
      </div>
    </DraftScreen>
  )
}
