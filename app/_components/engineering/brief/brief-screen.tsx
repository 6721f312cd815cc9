'use client'

import { PageSection } from '@/app/_components/ui/section'
import {
  BRIEF_FIELDS,
  type Brief,
  DEFAULT_RATIO_TABLE_ID,
  DEFAULT_SURVIVAL_PCT,
  DEFAULT_WEIBULL_SLOPE,
  type FieldWords,
  RATIO_TABLES,
} from '@/lib/engine'
import { asEntered, getUnitSymbol } from '@/lib/engine/units'
import {
  ChoiceSetCell,
  DateCell,
  FormCells,
  LongTextCell,
  makePlaces,
  ObservedCell,
  OptionalChoiceCell,
  OptionalNumberCell,
  TextCell,
} from '../cells'
import { DraftScreen, type DraftScreenProps, useDraft, useEdit } from '../draft'
import '../engineering.css'
import { ExposureTerms, TermCells } from './terms-form'
import {
  CLASS_CHOICES,
  FINISH_CHOICES,
  PANEL_CHOICES,
  PLATING_QUALITY_CHOICES,
  TYPE_CHOICES,
  USE_CHOICES,
} from './words'

/** What the part is for and under which conditions it must work. */
export function BriefScreen({ stored, saveAction }: DraftScreenProps) {
  return (
    <DraftScreen stored={stored} saveAction={saveAction}>
      <FormCells>
        <BriefFields />
      </FormCells>
    </DraftScreen>
  )
}

const RATIO_CHOICES = RATIO_TABLES.map((table) => ({ value: table.id, label: table.name }))
const DEFAULT_RATIO_NAME = RATIO_TABLES.find((table) => table.id === DEFAULT_RATIO_TABLE_ID)?.name ?? ''

type KeysOf<V> = { [K in keyof Brief]: [Brief[K], V] extends [V, Brief[K]] ? K : never }[keyof Brief]

function BriefFields() {
  const { state, stored } = useDraft()
  const edit = useEdit()
  const { brief } = state.design
  const at = makePlaces(['brief'], 'brief', 'brief')
  const atDesign = makePlaces([], 'design', 'design')
  const set = (part: Partial<Brief>) =>
    edit(`brief.${Object.keys(part).join('.')}`, (design) => ({ ...design, brief: { ...design.brief, ...part } }))
  // Each helper fixes one kind of field, so that the form below reads as a list of what is asked.
  const words = (key: keyof Brief) => {
    const { label, hint, unit }: FieldWords = BRIEF_FIELDS[key]
    return { label, at: at(key), ...(hint === undefined ? {} : { hint }), unit }
  }
  const plain = (key: keyof Brief) => {
    const { unit: _, ...field } = words(key)
    return field
  }
  const text = (key: KeysOf<string>) => (
    <LongTextCell {...plain(key)} value={brief[key]} onChange={(value) => set({ [key]: value })} />
  )
  const observed = (key: KeysOf<boolean | null>) => (
    <ObservedCell {...plain(key)} value={brief[key]} onChange={(value) => set({ [key]: value })} />
  )
  const number = (key: KeysOf<number | null>, hint?: string) => {
    const { unit, ...field } = words(key)
    return (
      <OptionalNumberCell
        {...field}
        value={brief[key]}
        onChange={(value) => set({ [key]: value })}
        {...(unit === undefined || unit === 'parts-per-year' ? {} : { unit: getUnitSymbol(unit) })}
        {...(hint === undefined ? {} : { hint })}
      />
    )
  }
  const date = (key: 'manufacturingReviewDate' | 'layoutFreezeDate' | 'needDate') => (
    <DateCell {...plain(key)} value={brief[key]} onChange={(value) => set({ [key]: value })} />
  )
  return (
    <>
      <PageSection title="The part">
        <div className="form-grid">
          <TextCell
            label="Design name"
            at={atDesign('name')}
            value={state.design.name}
            onChange={(name) => edit('design.name', (design) => ({ ...design, name }))}
          />
          <TextCell {...plain('partNumber')} value={brief.partNumber} onChange={(partNumber) => set({ partNumber })} />
          <div className="field">
            <span className="field-label">Revision</span>
            <span className="cell-value">{stored.label}</span>
            <span className="field-hint">The revision’s own label, printed on the drawing and in the package.</span>
          </div>
          {number('quantityPerYear')}
          <div className="field-wide">{text('purpose')}</div>
        </div>
      </PageSection>
      <PageSection title="Class, type and use">
        <div className="form-grid">
          <OptionalChoiceCell
            {...plain('performanceClass')}
            value={brief.performanceClass}
            choices={CLASS_CHOICES}
            emptyLabel="not stated"
            onChange={(performanceClass) => set({ performanceClass })}
          />
          <OptionalChoiceCell
            {...plain('circuitType')}
            value={brief.circuitType}
            choices={TYPE_CHOICES}
            emptyLabel="not stated"
            onChange={(circuitType) => set({ circuitType })}
          />
          <ChoiceSetCell
            {...plain('installationUses')}
            values={brief.installationUses}
            choices={USE_CHOICES}
            onChange={(installationUses) => set({ installationUses })}
          />
          {number('operatingMinDegC')}
          {number('operatingMaxDegC')}
          {number('flatAtDegC')}
          {number('temperatureCycles')}
          {number('cycleMinDegC')}
          {number('cycleMaxDegC')}
          <OptionalChoiceCell
            {...plain('holePlatingQuality')}
            value={brief.holePlatingQuality}
            choices={PLATING_QUALITY_CHOICES}
            emptyLabel="not stated"
            onChange={(holePlatingQuality) => set({ holePlatingQuality })}
          />
        </div>
      </PageSection>
      <PageSection title="Assembly">
        <div className="form-grid">
          <OptionalChoiceCell
            {...plain('surfaceFinish')}
            value={brief.surfaceFinish}
            choices={FINISH_CHOICES}
            onChange={(surfaceFinish) => set({ surfaceFinish })}
          />
          {observed('solderedAssembly')}
          <OptionalChoiceCell
            {...plain('panelForm')}
            value={brief.panelForm}
            choices={PANEL_CHOICES}
            onChange={(panelForm) => set({ panelForm })}
          />
          <div className="field-wide">{text('bakeBeforeAssembly')}</div>
          <div className="field-wide">{text('packingAndHandling')}</div>
        </div>
        <TermCells record="assembly" />
      </PageSection>
      {brief.panelForm !== 'single-parts' && (
        <PageSection title={BRIEF_FIELDS.array.label}>
          <TermCells record="array" />
        </PageSection>
      )}
      <PageSection title="Drawing, test and inspection">
        <div className="form-grid">
          {observed('electricalTest')}
          {observed('couponTest')}
          {observed('foldTest')}
          <div className="field-wide">{text('toleranceScheme')}</div>
          <div className="field-wide">{text('registrationCriticalFeatures')}</div>
        </div>
        <TermCells record="tolerances" />
      </PageSection>
      <PageSection title={BRIEF_FIELDS.acceptance.label}>
        <TermCells record="acceptance" />
      </PageSection>
      <PageSection title="Finish and marking">
        <TermCells record="finishTerms" />
        <TermCells record="marking" />
      </PageSection>
      <PageSection title={BRIEF_FIELDS.agreements.label}>
        <TermCells record="agreements" />
      </PageSection>
      <PageSection title={BRIEF_FIELDS.exposure.label}>
        <ExposureTerms />
      </PageSection>
      <PageSection title="Dates and people">
        <div className="form-grid">
          {date('manufacturingReviewDate')}
          {date('layoutFreezeDate')}
          {date('needDate')}
          <TextCell {...plain('whoToAsk')} value={brief.whoToAsk} onChange={(whoToAsk) => set({ whoToAsk })} />
        </div>
      </PageSection>
      <PageSection title="Calculation settings">
        <p className="small muted">Leave blank to use the default shown; results will say so.</p>
        <div className="form-grid">
          {number('lifeSurvivalPct', `Default ${asEntered(DEFAULT_SURVIVAL_PCT, 'pct')}.`)}
          {number(
            'lifeWeibullSlope',
            `Default ${DEFAULT_WEIBULL_SLOPE}: no published slope for flex copper was found.`,
          )}
          <OptionalChoiceCell
            {...plain('ratioTableKey')}
            value={brief.ratioTableKey}
            choices={RATIO_CHOICES}
            emptyLabel={`default: ${DEFAULT_RATIO_NAME}`}
            onChange={(ratioTableKey) => set({ ratioTableKey })}
          />
        </div>
      </PageSection>
    </>
  )
}
