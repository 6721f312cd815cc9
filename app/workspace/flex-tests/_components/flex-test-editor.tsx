'use client'

import { useState } from 'react'
import { FabricationGrid } from '@/app/_components/fabrication/grid/fabrication-grid'
import { SaveState } from '@/app/_components/fabrication/grid/save-state'
import { useSheetGrid } from '@/app/_components/fabrication/grid/use-sheet-grid'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { TextField } from '@/app/_components/ui/text-field'
import { useAction } from '@/app/_components/ui/use-action'
import type { FlexTestRow } from '@/lib/engine/flex-tests'
import { FLEX_TEST_TABLE } from '@/lib/fabrication'
import { saveWorkspaceFlexTests } from '../actions'

interface FlexTestEditorProps {
  readonly rows: readonly FlexTestRow[]
  /** Of the catalogue. */
  readonly seenVersion: number
  readonly mayEdit: boolean
}

/** The workspace's specimens as a grid, saved as a new version of its catalogue. */
export function FlexTestEditor({ rows, seenVersion, mayEdit }: FlexTestEditorProps) {
  const { state, onChange, reading, unsavedCount } = useSheetGrid(FLEX_TEST_TABLE, rows, mayEdit)
  const [reason, setReason] = useState('')
  const { send, isPending, refusal } = useAction(saveWorkspaceFlexTests)
  return (
    <div className="stack">
      <FabricationGrid
        label="Flex tests of the workspace"
        table={FLEX_TEST_TABLE}
        state={state}
        onChange={onChange}
        faults={reading.faults}
        isReadOnly={!mayEdit}
      />
      {mayEdit && (
        <>
          <SaveState unsavedCount={unsavedCount} faultCount={reading.faults.size} />
          <TextField
            label="Reason"
            hint="Stands with the version of the catalogue."
            value={reason}
            onChange={setReason}
          />
          <FormError refusal={refusal} />
          <div className="row">
            <Button
              weight="strong"
              isPending={isPending}
              isDisabled={reading.faults.size > 0}
              onPress={() => send({ seenVersion, rows: reading.rows, reason })}
            >
              Save flex tests
            </Button>
          </div>
        </>
      )}
    </div>
  )
}
