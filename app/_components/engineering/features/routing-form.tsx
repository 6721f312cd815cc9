'use client'

import { PageSection } from '@/app/_components/ui/section'
import { FEATURE_FIELDS, type Features, type FieldWords } from '@/lib/engine'
import { FormCells, makePlaces, ObservedCell, OptionalPlanLengthCell } from '../cells'
import { useDraft, useEdit } from '../draft'

const QUESTIONS = Object.entries(FEATURE_FIELDS.routing.fields) as [keyof Features['routing'], FieldWords][]

/** Observations on the part as a whole. */
export function RoutingForm() {
  const { state } = useDraft()
  const edit = useEdit()
  const { features } = state.design
  const at = makePlaces(['features'], 'features', 'the part')
  return (
    <PageSection title="Routing and drawing, whole part">
      <FormCells>
        <div className="form-grid">
          <OptionalPlanLengthCell
            label={FEATURE_FIELDS.copperToOutlineMm.label}
            at={at('copperToOutlineMm')}
            value={features.copperToOutlineMm}
            onChange={(copperToOutlineMm) =>
              edit(at('copperToOutlineMm').key, (design) => ({
                ...design,
                features: { ...design.features, copperToOutlineMm },
              }))
            }
          />
          {QUESTIONS.map(([key, { label }]) => (
            <ObservedCell
              key={key}
              label={label}
              at={at('routing', key)}
              value={features.routing[key]}
              onChange={(value) =>
                edit(at('routing', key).key, (design) => ({
                  ...design,
                  features: { ...design.features, routing: { ...design.features.routing, [key]: value } },
                }))
              }
            />
          ))}
        </div>
      </FormCells>
    </PageSection>
  )
}
