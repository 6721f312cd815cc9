'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable, NoteRow } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { KeptConstructionView } from '@/lib/data'
import { WithdrawForm } from './withdraw-form'

const makeColumns = (mayEdit: boolean) =>
  ({
    name: { head: 'Name', isRowHead: true },
    purpose: { head: 'Chosen for' },
    copper: { head: 'Copper layers', isNumeric: true },
    layers: { head: 'Layers', isNumeric: true },
    zones: { head: 'Zones', isNumeric: true },
    bends: { head: 'Bends', isNumeric: true },
    kept: { head: 'Kept' },
    ...(mayEdit ? { acts: { head: 'Acts', isHeadHidden: true, className: 'no-print row-acts' } } : {}),
  }) satisfies Columns

interface KeptConstructionsProps {
  readonly constructions: readonly KeptConstructionView[]
  readonly mayEdit: boolean
}

/** Starting constructions of the workspace's own, as every new revision offers them. */
export function KeptConstructions({ constructions, mayEdit }: KeptConstructionsProps) {
  const [withdrawnId, setWithdrawnId] = useState<string | null>(null)
  const columns = makeColumns(mayEdit)
  if (constructions.length === 0) {
    return <EmptyState>None yet. A lead engineer keeps one at the foot of a revision’s construction page.</EmptyState>
  }
  return (
    <DataTable label="Starting constructions of the workspace" columns={columns}>
      {constructions.map((kept) => (
        <ConstructionRow
          key={kept.entryId}
          kept={kept}
          mayEdit={mayEdit}
          isWithdrawing={withdrawnId === kept.entryId}
          onWithdraw={setWithdrawnId}
        />
      ))}
    </DataTable>
  )
}

interface ConstructionRowProps {
  readonly kept: KeptConstructionView
  readonly mayEdit: boolean
  readonly isWithdrawing: boolean
  readonly onWithdraw: (entryId: string | null) => void
}

function ConstructionRow({ kept, mayEdit, isWithdrawing, onWithdraw }: ConstructionRowProps) {
  const { entryId, name, purpose, conductorLayerCount, layerCount, zoneCount, bendCount, changedAt, changedBy } = kept
  const columns = makeColumns(mayEdit)
  return (
    <>
      <DataRow
        columns={columns}
        cells={{
          name,
          purpose,
          copper: conductorLayerCount,
          layers: layerCount,
          zones: zoneCount,
          bends: bendCount,
          kept: (
            <>
              <Timestamp at={changedAt} dateOnly />, {changedBy.name}
            </>
          ),
          acts: mayEdit && (
            <Button weight="quiet" aria-label={`Withdraw ${name}`} onPress={() => onWithdraw(entryId)}>
              Withdraw
            </Button>
          ),
        }}
      />
      {isWithdrawing && (
        <NoteRow columns={columns}>
          <WithdrawForm entryId={entryId} version={kept.version} onClose={() => onWithdraw(null)} />
        </NoteRow>
      )}
    </>
  )
}
