'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable, NoteRow } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { OwnMaterialView } from '@/lib/data'
import { citeRecordedSource, getChoiceWord, listMaterialConstants, MATERIAL_FIELDS } from '@/lib/engine'
import { digitsAsEntered } from '@/lib/engine/units'
import { MaterialForm } from './material-form'
import { WithdrawForm } from './withdraw-form'

const makeColumns = (mayEdit: boolean) =>
  ({
    name: { head: MATERIAL_FIELDS.name.label, isRowHead: true },
    kind: { head: MATERIAL_FIELDS.kind.label },
    specification: { head: MATERIAL_FIELDS.specification.label },
    modulus: { head: MATERIAL_FIELDS.modulusGpa.label, unit: 'GPa', isNumeric: true },
    sources: { head: 'Sources' },
    version: { head: 'Version', isNumeric: true },
    changed: { head: 'Changed' },
    ...(mayEdit ? { acts: { head: 'Acts', isHeadHidden: true, className: 'no-print row-acts' } } : {}),
  }) satisfies Columns

type Open = { readonly act: 'add' } | { readonly act: 'change' | 'withdraw'; readonly entryId: string } | null

interface OwnMaterialsProps {
  readonly materials: readonly OwnMaterialView[]
  readonly mayEdit: boolean
}

/** Materials of the workspace's own, as every construction offers them. */
export function OwnMaterials({ materials, mayEdit }: OwnMaterialsProps) {
  const [open, setOpen] = useState<Open>(null)
  const close = () => setOpen(null)
  const columns = makeColumns(mayEdit)
  const changed = open?.act === 'change' ? materials.find(({ entryId }) => entryId === open.entryId) : undefined
  return (
    <div className="stack">
      {materials.length === 0 ? (
        <EmptyState>The workspace has no materials of its own yet.</EmptyState>
      ) : (
        <DataTable label="Materials of the workspace" columns={columns}>
          {materials.map((entry) => (
            <MaterialRow
              key={entry.entryId}
              entry={entry}
              mayEdit={mayEdit}
              isWithdrawing={open?.act === 'withdraw' && open.entryId === entry.entryId}
              onOpen={setOpen}
            />
          ))}
        </DataTable>
      )}
      {mayEdit && open === null && (
        <div className="no-print">
          <Button onPress={() => setOpen({ act: 'add' })}>Add a material</Button>
        </div>
      )}
      {open?.act === 'add' && (
        <section aria-label="A new material">
          <h3>A new material</h3>
          <MaterialForm material={null} onClose={close} />
        </section>
      )}
      {changed !== undefined && (
        <section aria-label={`Change: ${changed.name}`}>
          <h3>Change: {changed.name}</h3>
          <p className="small muted">
            Saving makes version {changed.version + 1}. Designs keep the version that they took.
          </p>
          <MaterialForm key={changed.entryId} material={changed} onClose={close} />
        </section>
      )}
    </div>
  )
}

interface MaterialRowProps {
  readonly entry: OwnMaterialView
  readonly mayEdit: boolean
  readonly isWithdrawing: boolean
  readonly onOpen: (open: Open) => void
}

function MaterialRow({ entry, mayEdit, isWithdrawing, onOpen }: MaterialRowProps) {
  const { entryId, name, version, material, reason, changedBy, changedAt } = entry
  const columns = makeColumns(mayEdit)
  const sources = [
    ...new Set(listMaterialConstants(material).map(({ number }) => citeRecordedSource(number.sourceKey))),
  ]
  return (
    <>
      <DataRow
        columns={columns}
        cells={{
          name,
          kind: getChoiceWord(MATERIAL_FIELDS.kind, material.kind),
          specification: material.specification,
          modulus: digitsAsEntered(material.modulusGpa.value),
          sources: <span className="small">{sources.join('; ')}</span>,
          version,
          changed: (
            <>
              <Timestamp at={changedAt} dateOnly />, {changedBy.name}: {reason}
            </>
          ),
          acts: mayEdit && (
            <>
              <Button weight="quiet" aria-label={`Change ${name}`} onPress={() => onOpen({ act: 'change', entryId })}>
                Change
              </Button>
              <Button
                weight="quiet"
                aria-label={`Withdraw ${name}`}
                onPress={() => onOpen({ act: 'withdraw', entryId })}
              >
                Withdraw
              </Button>
            </>
          ),
        }}
      />
      {isWithdrawing && (
        <NoteRow columns={columns}>
          <WithdrawForm entryId={entryId} version={version} onClose={() => onOpen(null)} />
        </NoteRow>
      )}
    </>
  )
}
