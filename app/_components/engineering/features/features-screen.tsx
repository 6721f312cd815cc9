'use client'

import { DraftProvider, SaveBar, type SaveDesignAction, type StoredRevision } from '../draft'
import '../engineering.css'
import { ConductorResults } from './conductor-results'
import { CrossingsTable } from './crossings-table'
import {
  ComponentFeatures,
  ConductorFeatures,
  CornerFeatures,
  CoverlayOpeningFeatures,
  HoleFeatures,
  PadFeatures,
  SlitFeatures,
  StiffenerFeatures,
  WidthStepFeatures,
} from './feature-tables'
import { OutlineForm } from './outline-form'
import { RoutingForm } from './routing-form'

/** Dimensions typed in, one table per kind of feature. An empty cell is "not known", never a default. */
export function FeaturesScreen({ stored, saveAction }: { stored: StoredRevision; saveAction: SaveDesignAction }) {
  return (
    <DraftProvider stored={stored}>
      <SaveBar action={saveAction} />
      <RoutingForm />
      <OutlineForm />
      <ConductorFeatures />
      <CrossingsTable />
      <ConductorResults />
      <HoleFeatures />
      <PadFeatures />
      <CornerFeatures />
      <WidthStepFeatures />
      <CoverlayOpeningFeatures />
      <StiffenerFeatures />
      <SlitFeatures />
      <ComponentFeatures />
    </DraftProvider>
  )
}
