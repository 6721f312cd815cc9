'use client'

import { Section } from '@/app/_components/ui/section'
import type { Features } from '@/lib/engine'
import { FormCells, makePlaces, ObservedCell, OptionalPlanLengthCell } from '../cells'
import { useDraft, useEdit } from '../draft'

const QUESTIONS: readonly { readonly key: keyof Features['routing']; readonly label: string }[] = [
  { key: 'cornersCurved', label: 'Conductors turn in curves, not corners' },
  { key: 'evenlySpacedInBends', label: 'Conductors are evenly spaced in bends' },
  { key: 'staggeredOnAdjacentLayers', label: 'Conductors on adjacent layers are staggered' },
  { key: 'coverlayEdgeInsideBend', label: 'A coverlay or stiffener edge lies inside a bend' },
  { key: 'cutOutsConsideredAtTightBends', label: 'Cut-outs were considered at tight bends' },
  { key: 'layersNamedOnDrawing', label: 'The drawing names all layers, flex layers apart' },
  { key: 'bendsCalledOutOnDrawing', label: 'The drawing calls out every bend' },
  { key: 'coverlayDetailOnDrawing', label: 'The drawing shows coverlay, stiffener and adhesive details' },
]

/** Observations on the part as a whole. */
export function RoutingForm() {
  const { state } = useDraft()
  const edit = useEdit()
  const { features } = state.design
  const at = makePlaces(['features'], 'features', 'the part')
  return (
    <Section title="Routing and drawing as a whole">
      <FormCells>
        <div className="form-grid">
          <OptionalPlanLengthCell
            label="Least distance of copper to the outline"
            at={at('copperToOutlineMm')}
            value={features.copperToOutlineMm}
            onChange={(copperToOutlineMm) =>
              edit(at('copperToOutlineMm').key, (design) => ({
                ...design,
                features: { ...design.features, copperToOutlineMm },
              }))
            }
          />
          {QUESTIONS.map(({ key, label }) => (
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
    </Section>
  )
}
