'use client'

import { DraftScreen, type DraftScreenProps } from '../draft'
import '../engineering.css'
import { ConductorResults } from './conductor-results'
import { ConnectorForms } from './connector-forms'
import { CrossingsTable } from './crossings-table'
import { EdgeForms } from './edge-forms'
import {
  ComponentFeatures,
  ConductorFeatures,
  CornerFeatures,
  CoverlayOpeningFeatures,
  HoleFeatures,
  NetClassFeatures,
  PadFeatures,
  RegistrationFeatures,
  SlitFeatures,
  StiffenerFeatures,
  WidthStepFeatures,
} from './feature-tables'
import { ImpedanceTable } from './impedance-table'
import { OutlineForm } from './outline-form'
import { RoutingForm } from './routing-form'

/** Dimensions typed in, one table per kind of feature. An empty cell is "not known", never a default. */
export function FeaturesScreen({ stored, saveAction }: DraftScreenProps) {
  return (
    <DraftScreen stored={stored} saveAction={saveAction}>
      <RoutingForm />
      <OutlineForm />
      <NetClassFeatures />
      <ConductorFeatures />
      <CrossingsTable />
      <ImpedanceTable />
      <ConductorResults />
      <HoleFeatures />
      <PadFeatures />
      <CornerFeatures />
      <WidthStepFeatures />
      <CoverlayOpeningFeatures />
      <StiffenerFeatures />
      <SlitFeatures />
      <ComponentFeatures />
      <ConnectorForms />
      <RegistrationFeatures />
      <EdgeForms />
    </DraftScreen>
  )
}
