'use client'

import { Section } from '@/app/_components/ui/section'
import {
  type Brief,
  DEFAULT_RATIO_TABLE_ID,
  DEFAULT_SURVIVAL_PCT,
  DEFAULT_WEIBULL_SLOPE,
  RATIO_TABLES,
} from '@/lib/engine'
import {
  DateCell,
  FormCells,
  LongTextCell,
  makePlaces,
  ObservedCell,
  OptionalChoiceCell,
  OptionalNumberCell,
  TextCell,
} from '../cells'
import { DraftProvider, SaveBar, type SaveDesignAction, type StoredRevision, useDraft, useEdit } from '../draft'
import '../engineering.css'
import { CLASS_CHOICES, FINISH_CHOICES, PANEL_CHOICES, TYPE_CHOICES, USE_CHOICES } from './words'

/** What the part is for and under which conditions it must work. */
export function BriefScreen({ stored, saveAction }: { stored: StoredRevision; saveAction: SaveDesignAction }) {
  return (
    <DraftProvider stored={stored}>
      <SaveBar action={saveAction} />
      <FormCells>
        <BriefFields />
      </FormCells>
    </DraftProvider>
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
  const text = (key: KeysOf<string>, label: string, hint?: string) => (
    <LongTextCell
      label={label}
      at={at(key)}
      value={brief[key]}
      onChange={(value) => set({ [key]: value })}
      {...(hint === undefined ? {} : { hint })}
    />
  )
  const observed = (key: KeysOf<boolean | null>, label: string) => (
    <ObservedCell label={label} at={at(key)} value={brief[key]} onChange={(value) => set({ [key]: value })} />
  )
  const number = (key: KeysOf<number | null>, label: string, unit?: string, hint?: string) => (
    <OptionalNumberCell
      label={label}
      at={at(key)}
      value={brief[key]}
      onChange={(value) => set({ [key]: value })}
      {...(unit === undefined ? {} : { unit })}
      {...(hint === undefined ? {} : { hint })}
    />
  )
  const date = (key: 'manufacturingReviewDate' | 'layoutFreezeDate' | 'needDate', label: string, hint: string) => (
    <DateCell label={label} hint={hint} at={at(key)} value={brief[key]} onChange={(value) => set({ [key]: value })} />
  )
  return (
    <>
      <Section title="The part">
        <div className="form-grid">
          <TextCell
            label="Design name"
            at={atDesign('name')}
            value={state.design.name}
            onChange={(name) => edit('design.name', (design) => ({ ...design, name }))}
          />
          <TextCell
            label="Part number"
            at={at('partNumber')}
            value={brief.partNumber}
            onChange={(partNumber) => set({ partNumber })}
          />
          <div className="field">
            <span className="field-label">Revision</span>
            <span className="cell-value">{stored.label}</span>
            <span className="field-hint">The revision’s own label; drawing and package carry it.</span>
          </div>
          {number('quantityPerYear', 'Quantity per year')}
          <div className="field-wide">{text('purpose', 'Purpose', 'What the circuit does, and how it moves.')}</div>
        </div>
      </Section>
      <Section title="Class, type and use">
        <div className="form-grid">
          <OptionalChoiceCell
            label="Performance class"
            at={at('performanceClass')}
            value={brief.performanceClass}
            choices={CLASS_CHOICES}
            emptyLabel="not stated"
            onChange={(performanceClass) => set({ performanceClass })}
          />
          <OptionalChoiceCell
            label="Type"
            hint="Types and uses of IPC-6013."
            at={at('circuitType')}
            value={brief.circuitType}
            choices={TYPE_CHOICES}
            emptyLabel="not stated"
            onChange={(circuitType) => set({ circuitType })}
          />
          <OptionalChoiceCell
            label="Use"
            at={at('installationUse')}
            value={brief.installationUse}
            choices={USE_CHOICES}
            emptyLabel="not stated"
            onChange={(installationUse) => set({ installationUse })}
          />
          {number('operatingMinDegC', 'Lowest operating temperature', '°C')}
          {number('operatingMaxDegC', 'Highest operating temperature', '°C')}
        </div>
      </Section>
      <Section title="Assembly">
        <div className="form-grid">
          <OptionalChoiceCell
            label="Surface finish"
            at={at('surfaceFinish')}
            value={brief.surfaceFinish}
            choices={FINISH_CHOICES}
            onChange={(surfaceFinish) => set({ surfaceFinish })}
          />
          {observed('solderedAssembly', 'Parts are soldered on')}
          <OptionalChoiceCell
            label="Form of panel"
            at={at('panelForm')}
            value={brief.panelForm}
            choices={PANEL_CHOICES}
            onChange={(panelForm) => set({ panelForm })}
          />
          <div className="field-wide">{text('bakeBeforeAssembly', 'Bake before assembly')}</div>
          <div className="field-wide">{text('packingAndHandling', 'Packing and handling')}</div>
        </div>
      </Section>
      <Section title="Drawing, test and inspection">
        <div className="form-grid">
          {observed('electricalTest', 'Electrical test asked for')}
          {observed('couponTest', 'Test coupons asked for')}
          {observed('foldTest', 'Fold test asked for')}
          <div className="field-wide">
            {text(
              'toleranceScheme',
              'Tolerance and datum scheme',
              'How a part that does not keep its shape is measured.',
            )}
          </div>
          <div className="field-wide">
            {text('registrationCriticalFeatures', 'Features that need tight registration')}
          </div>
        </div>
      </Section>
      <Section title="Dates and people">
        <div className="form-grid">
          {date('manufacturingReviewDate', 'Manufacturing review', 'With the fabricator, before layout freezes.')}
          {date('layoutFreezeDate', 'Layout freezes', 'After this, changes cost.')}
          {date('needDate', 'Parts needed', 'Latest order dates of materials follow from it.')}
          <TextCell
            label="Whom to ask when in doubt"
            at={at('whoToAsk')}
            value={brief.whoToAsk}
            onChange={(whoToAsk) => set({ whoToAsk })}
          />
        </div>
      </Section>
      <Section title="How the review reckons">
        <p className="small muted">Left empty, each takes the default named beside it, and results say so.</p>
        <div className="form-grid">
          {number('lifeSurvivalPct', 'Share of parts that must survive', '%', `Default ${DEFAULT_SURVIVAL_PCT} %.`)}
          {number(
            'lifeWeibullSlope',
            'Weibull slope of fatigue life',
            undefined,
            `Default ${DEFAULT_WEIBULL_SLOPE}: no published slope for flex copper was found.`,
          )}
          <OptionalChoiceCell
            label="Table of radius to thickness"
            hint="Published tables differ by a factor of two to five, so the one compared with is named."
            at={at('ratioTableKey')}
            value={brief.ratioTableKey}
            choices={RATIO_CHOICES}
            emptyLabel={`default: ${DEFAULT_RATIO_NAME}`}
            onChange={(ratioTableKey) => set({ ratioTableKey })}
          />
        </div>
      </Section>
    </>
  )
}
