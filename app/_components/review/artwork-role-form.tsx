'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { NumberField } from '@/app/_components/ui/number-field'
import { SelectField } from '@/app/_components/ui/select-field'
import { useAction } from '@/app/_components/ui/use-action'
import { type ArtworkFileFacts, LAYER_ROLES } from '@/lib/artwork'
import { setArtworkRole } from './actions'

type Role = (typeof LAYER_ROLES)[number]
type Side = 'top' | 'bottom' | 'inner'

const BY_FILES = 'what the files say'
const ROLE_OPTIONS = [BY_FILES, ...LAYER_ROLES].map((value) => ({ value, label: value }))
const SIDE_OPTIONS = (['not said', 'top', 'inner', 'bottom'] as const).map((value) => ({ value, label: value }))

/** Says what a file is for, where the guess from attributes and names is wrong or there is none. */
export function ArtworkRoleForm({ revisionId, file }: { revisionId: string; file: ArtworkFileFacts }) {
  const [isOpen, setIsOpen] = useState(false)
  const [role, setRole] = useState<string>(file.role.role ?? BY_FILES)
  const [side, setSide] = useState<Side | 'not said'>(file.role.side ?? 'not said')
  const [layerNumber, setLayerNumber] = useState<number | null>(file.role.layerNumber)
  const { send, isPending, refusal } = useAction(setArtworkRole)
  if (!isOpen) {
    return (
      <Button weight="quiet" onPress={() => setIsOpen(true)}>
        Set its role<span className="sr-only">: {file.name}</span>
      </Button>
    )
  }
  const save = () =>
    send(
      {
        revisionId,
        fileName: file.name,
        sha256: file.sha256,
        role: role === BY_FILES ? null : (role as Role),
        side: role === BY_FILES || side === 'not said' ? null : side,
        layerNumber: role === 'copper' ? layerNumber : null,
      },
      () => setIsOpen(false),
    )
  return (
    <div className="stack no-print">
      <SelectField label={`What ${file.name} is for`} value={role} options={ROLE_OPTIONS} onChange={setRole} />
      {role !== BY_FILES && <SelectField label="Side" value={side} options={SIDE_OPTIONS} onChange={setSide} />}
      {role === 'copper' && (
        <NumberField
          label="Conductor layer"
          hint="1 at the top."
          isOptional
          value={layerNumber}
          onChange={setLayerNumber}
        />
      )}
      <div className="row">
        <Button weight="strong" isPending={isPending} onPress={save}>
          Save
        </Button>
        <Button weight="quiet" onPress={() => setIsOpen(false)}>
          Cancel
        </Button>
      </div>
      <FormError refusal={refusal} />
    </div>
  )
}
