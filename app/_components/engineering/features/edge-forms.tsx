'use client'

import { PageSection } from '@/app/_components/ui/section'
import { FEATURE_FIELDS, type Features, featuresSchema } from '@/lib/engine'
import { FormCells, makePlaces, RecordCells } from '../cells'
import { useDraft, useEdit } from '../draft'

/** What is agreed for the edges of rigid zones, and for the ground of a shield where the construction has one. */
export function EdgeForms() {
  const { state } = useDraft()
  const hasShield = state.design.construction.layers.some(({ kind }) => kind === 'shield-film')
  return (
    <>
      <WholePartForm name="rigidEdges" />
      {hasShield && <WholePartForm name="shieldGround" />}
    </>
  )
}

function WholePartForm<K extends 'rigidEdges' | 'shieldGround'>({ name }: { name: K }) {
  const { state } = useDraft()
  const edit = useEdit()
  const at = makePlaces(['features'], 'features', 'the part')
  const { label, fields } = FEATURE_FIELDS[name]
  return (
    <PageSection title={label}>
      <FormCells>
        <div className="form-grid">
          <RecordCells<Features[K]>
            fields={fields as Parameters<typeof RecordCells<Features[K]>>[0]['fields']}
            shape={
              featuresSchema.shape[name].shape as unknown as Parameters<typeof RecordCells<Features[K]>>[0]['shape']
            }
            value={state.design.features[name]}
            at={(field) => at(name, field ?? '')}
            onChange={(key, change) =>
              edit(key, (design) => ({
                ...design,
                features: { ...design.features, [name]: change(design.features[name]) },
              }))
            }
          />
        </div>
      </FormCells>
    </PageSection>
  )
}
