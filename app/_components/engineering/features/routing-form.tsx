'use client'

import { PageSection } from '@/app/_components/ui/section'
import { FEATURE_FIELDS, type Features, type FieldWords, listChoices } from '@/lib/engine'
import { FormCells, makePlaces, ObservedCell, OptionalChoiceCell, OptionalPlanLengthCell } from '../cells'
import { useDraft, useEdit } from '../draft'

const CUT_CHOICES = listChoices(FEATURE_FIELDS.outlineCutBy)
/** Older documents state it. No item of the checklist rests on it, so nobody is asked for it any more. */
const UNASKED = 'cutOutsConsideredAtTightBends' satisfies keyof Features['routing']
const QUESTIONS = (Object.entries(FEATURE_FIELDS.routing.fields) as [keyof Features['routing'], FieldWords][]).filter(
  ([key]) => key !== UNASKED,
)

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
          <OptionalChoiceCell
            label={FEATURE_FIELDS.outlineCutBy.label}
            at={at('outlineCutBy')}
            value={features.outlineCutBy}
            choices={CUT_CHOICES}
            onChange={(outlineCutBy) =>
              edit(at('outlineCutBy').key, (design) => ({ ...design, features: { ...design.features, outlineCutBy } }))
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
