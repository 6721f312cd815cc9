'use client'

import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { PageSection } from '@/app/_components/ui/section'
import { type ConductorFeature, FEATURE_FIELDS, getChoiceWord, listChoices, withNetClasses } from '@/lib/engine'
import { asEntered, digitsAsEntered } from '@/lib/engine/units'
import { makePlaces, ObservedCell, OptionalChoiceCell, OptionalNumberCell } from '../cells'
import { useDraft, useEdit } from '../draft'

type Terms = ConductorFeature['impedance']

const WORDS = FEATURE_FIELDS.conductors.entry
const FIELDS = WORDS.impedance.fields

const COLUMNS = {
  conductor: { head: 'Conductor', isRowHead: true },
  impedance: { head: WORDS.impedanceOhm.label, unit: 'Ω', isNumeric: true },
  tolerancePct: { head: FIELDS.tolerancePct.label, unit: '%', isNumeric: true, className: 'cell-number' },
  kind: { head: FIELDS.kind.label },
  reference: { head: FIELDS.referenceLayerId.label },
  coupon: { head: FIELDS.coupon.label },
  unbroken: { head: FIELDS.referenceUnbroken.label },
} satisfies Columns

/** What belongs to each stated impedance. */
export function ImpedanceTable() {
  const { state } = useDraft()
  const edit = useEdit()
  const { conductors } = state.design.features
  // What the class of a conductor says is shown where the conductor says nothing.
  const needed = withNetClasses(state.design).features.conductors
  if (needed.every(({ impedanceOhm }) => impedanceOhm === null)) return null
  const layers = state.design.construction.layers
    .filter(({ kind }) => kind === 'conductor')
    .map(({ id, name }) => ({ value: id, label: name }))
  return (
    <PageSection title={WORDS.impedance.label}>
      <DataTable label={WORDS.impedance.label} columns={COLUMNS} isGrid>
        {conductors.map((conductor, index) => {
          const need = needed[index] ?? conductor
          if (need.impedanceOhm === null) return null
          const reference = state.design.construction.layers.find(({ id }) => id === need.impedance.referenceLayerId)
          const byClass = <K extends keyof Terms>(field: K, say: (value: NonNullable<Terms[K]>) => string) => {
            const value = need.impedance[field]
            return conductor.impedance[field] === null && value !== null ? (
              <span className="small muted">by class: {say(value)}</span>
            ) : null
          }
          const place = makePlaces(['features', 'conductors', index], `conductors.${conductor.id}`, conductor.name)
          const at = (field: keyof Terms) => place('impedance', field)
          const set = (field: keyof Terms, part: Partial<Terms>) =>
            edit(at(field).key, (design) => ({
              ...design,
              features: {
                ...design.features,
                conductors: design.features.conductors.map((present) =>
                  present.id === conductor.id ? { ...present, impedance: { ...present.impedance, ...part } } : present,
                ),
              },
            }))
          const { tolerancePct, kind, referenceLayerId, coupon } = conductor.impedance
          return (
            <DataRow
              key={conductor.id}
              columns={COLUMNS}
              cells={{
                conductor: conductor.name,
                impedance: digitsAsEntered(need.impedanceOhm),
                tolerancePct: (
                  <>
                    <OptionalNumberCell
                      label={FIELDS.tolerancePct.label}
                      at={at('tolerancePct')}
                      value={tolerancePct}
                      onChange={(value) => set('tolerancePct', { tolerancePct: value })}
                    />
                    {byClass('tolerancePct', (value) => `± ${asEntered(value, 'pct')}`)}
                  </>
                ),
                kind: (
                  <>
                    <OptionalChoiceCell
                      label={FIELDS.kind.label}
                      at={at('kind')}
                      value={kind}
                      choices={listChoices(FIELDS.kind)}
                      onChange={(value) => set('kind', { kind: value })}
                    />
                    {byClass('kind', (value) => getChoiceWord(FIELDS.kind, value))}
                  </>
                ),
                reference: (
                  <>
                    <OptionalChoiceCell
                      label={FIELDS.referenceLayerId.label}
                      at={at('referenceLayerId')}
                      value={referenceLayerId}
                      choices={layers.filter(({ value }) => value !== conductor.layerId)}
                      onChange={(value) => set('referenceLayerId', { referenceLayerId: value })}
                    />
                    {byClass('referenceLayerId', () => reference?.name ?? '')}
                  </>
                ),
                coupon: (
                  <>
                    <ObservedCell
                      label={FIELDS.coupon.label}
                      at={at('coupon')}
                      value={coupon}
                      onChange={(value) => set('coupon', { coupon: value })}
                    />
                    {byClass('coupon', (value) => (value ? 'yes' : 'no'))}
                  </>
                ),
                unbroken: (
                  <ObservedCell
                    label={FIELDS.referenceUnbroken.label}
                    at={at('referenceUnbroken')}
                    value={conductor.impedance.referenceUnbroken}
                    onChange={(value) => set('referenceUnbroken', { referenceUnbroken: value })}
                  />
                ),
              }}
            />
          )
        })}
      </DataTable>
    </PageSection>
  )
}
