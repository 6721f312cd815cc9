'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { FormNumber, FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { QuantityText } from '@/app/_components/ui/quantity'
import { TextField } from '@/app/_components/ui/text-field'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { useAction } from '@/app/_components/ui/use-action'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { LimitView } from '@/lib/data'
import type { Unit } from '@/lib/engine/results'
import { limitInput } from '@/lib/inputs'
import { setLimit } from './actions'

/** One row of the dictionary of limits. */
export interface LimitRow {
  key: string
  label: string
  unit: Unit
  sense: 'at-most' | 'at-least'
  value: number
  allowed: { min: number; max: number }
  source: string
  note: string
}

interface LimitListProps {
  rows: readonly LimitRow[]
  limits: readonly LimitView[]
  companyId: string | null
  mayEdit: boolean
}

/** Published or customary limits, and beside them what this owner sets instead. */
export function LimitList({ rows, limits, companyId, mayEdit }: LimitListProps) {
  const [words, setWords] = useState('')
  const [editedKey, setEditedKey] = useState<string | null>(null)
  const wanted = words.trim().toLowerCase()
  const shown = rows.filter(
    (row) => wanted === '' || `${row.label} ${row.key} ${row.note}`.toLowerCase().includes(wanted),
  )
  const columns = {
    limit: { head: 'Limit', isRowHead: true, className: 'font-normal' },
    usual: { head: 'Usual', isNumeric: true },
    source: { head: 'Source', className: 'muted small' },
    setTo: { head: 'Set to', isNumeric: true },
    by: { head: 'By', className: 'small' },
    ...(mayEdit ? { acts: { head: 'Acts', isHeadHidden: true } } : {}),
  } satisfies Columns
  return (
    <>
      <div className="row filters no-print">
        <TextField label="Find a limit" type="search" value={words} onChange={setWords} />
      </div>
      <DataTable label="Limits" columns={columns}>
        {shown.map((row) => {
          const own = limits.find((limit) => limit.key === row.key)
          return (
            <DataRow
              key={row.key}
              columns={columns}
              cells={{
                limit: (
                  <>
                    {row.label}
                    <p className="small muted">{row.note}</p>
                    {editedKey === row.key && (
                      <LimitForm row={row} own={own} companyId={companyId} onClose={() => setEditedKey(null)} />
                    )}
                  </>
                ),
                usual: (
                  <>
                    {row.sense === 'at-most' ? '≤' : '≥'}{' '}
                    <QuantityText quantity={{ value: row.value, unit: row.unit }} />
                  </>
                ),
                source: row.source,
                setTo:
                  own === undefined ? (
                    <span className="muted">not set</span>
                  ) : (
                    <strong>
                      {row.sense === 'at-most' ? '≤' : '≥'}{' '}
                      <QuantityText quantity={{ value: own.value, unit: row.unit }} />
                    </strong>
                  ),
                by: own !== undefined && (
                  <>
                    {own.setBy.name}, <Timestamp at={own.setAt} dateOnly />
                    {own.note !== '' && <span className="block muted">{own.note}</span>}
                  </>
                ),
                acts: editedKey !== row.key && (
                  <Button
                    weight="quiet"
                    aria-label={`${own === undefined ? 'Set' : 'Change'}: ${row.label}`}
                    onPress={() => setEditedKey(row.key)}
                  >
                    {own === undefined ? 'Set' : 'Change'}
                  </Button>
                ),
              }}
            />
          )
        })}
      </DataTable>
    </>
  )
}

interface LimitFormProps {
  row: LimitRow
  own: LimitView | undefined
  companyId: string | null
  onClose: () => void
}

function LimitForm({ row, own, companyId, onClose }: LimitFormProps) {
  const owner = companyId === null ? {} : { companyId }
  const seenVersion = own?.version ?? 0
  const { form, submit, isPending, refusal } = useActionForm({
    schema: limitInput,
    action: setLimit,
    defaultValues: {
      ...owner,
      key: row.key,
      seenVersion,
      value: own?.value ?? row.value,

      note: own?.note ?? '',
    },
    onDone: onClose,
  })
  const removal = useAction(setLimit)
  return (
    <form className="form above below" onSubmit={submit}>
      <FormNumber
        control={form.control}
        name="value"
        label={`${row.sense === 'at-most' ? 'At most' : 'At least'} (${row.unit})`}
        hint={`Between ${row.allowed.min} and ${row.allowed.max} ${row.unit}.`}
      />
      <FormText control={form.control} name="note" label="Reason for this limit" isOptional />
      <FormFoot
        refusal={refusal ?? removal.refusal}
        isPending={isPending}
        weight="strong"
        label="Save the limit"
        also={
          own !== undefined && (
            <Button
              isPending={removal.isPending}
              onPress={() => removal.send({ ...owner, key: row.key, seenVersion, value: null, note: '' }, onClose)}
            >
              Restore the default
            </Button>
          )
        }
        onCancel={onClose}
      />
    </form>
  )
}
