'use client'

import { Section } from '@/app/_components/ui/section'
import { DraftProvider, SaveBar, type SaveDesignAction, type StoredRevision } from '../draft'
import '../engineering.css'
import { BendSummary } from './bend-summary'
import { ContactFinishes, CopperInZones } from './copper-in-zones'
import { CopperTable } from './copper-table'
import { DesignFileActs } from './design-file-acts'
import { LayerTable } from './layer-table'
import { PresenceGrid } from './presence-grid'
import { SectionDrawings } from './section-drawings'
import { ThicknessResults } from './thickness-results'
import { ThroughThickness } from './through-thickness'
import { ZoneTable } from './zone-table'

/** Construction editor beside its drawings and results. */
export function ConstructionScreen({ stored, saveAction }: { stored: StoredRevision; saveAction: SaveDesignAction }) {
  return (
    <DraftProvider stored={stored}>
      <SaveBar action={saveAction} />
      <div className="bench">
        <div>
          <Section title="Layers" actions={<DesignFileActs />}>
            <LayerTable />
          </Section>
          <Section title="Copper">
            <CopperTable />
          </Section>
          <Section title="Zones">
            <ZoneTable />
          </Section>
          <Section title="Layers in zones">
            <PresenceGrid />
          </Section>
          <Section title="Plating and hatch by zone">
            <CopperInZones />
            <ContactFinishes />
          </Section>
          <Section title="Measured through the thickness">
            <ThroughThickness />
          </Section>
        </div>
        <div className="bench-results">
          <Section title="Bends in this construction">
            <BendSummary />
          </Section>
          <Section title="Sections">
            <SectionDrawings />
          </Section>
          <Section title="Thickness">
            <ThicknessResults />
          </Section>
        </div>
      </div>
    </DraftProvider>
  )
}
