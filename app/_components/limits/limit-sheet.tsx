'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormNumber, FormText } from '@/app/_components/ui/form-fields'
import { QuantityText } from '@/app/_components/ui/quantity'
import { TableFrame } from '@/app/_components/ui/table-frame'
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

interface LimitSheetProps {
  rows: readonly LimitRow[]
  limits: readonly LimitView[]
  companyId: string | null
  mayEdit: boolean
}

/** Published or customary limits, and beside them what this owner sets instead. */
export function LimitSheet({ rows, limits, companyId, mayEdit }: LimitSheetProps) {
  const [words, setWords] = useState('')
  const [editedKey, setEditedKey] = useState<string | null>(null)
  const wanted = words.trim().toLowerCase()
  const shown = rows.filter(
    (row) => wanted === '' || `${row.label} ${row.key} ${row.note}`.toLowerCase().includes(wanted),
  )
  return (
    <>
      <div className="row filters no-print">
        <TextField label="Find a limit" type="search" value={words} onChange={setWords} />
      </div>
      <TableFrame label="Limits">
        <table className="ledger" data-stack>
          <thead>
            <tr>
              <th scope="col">Limit</th>
              <th scope="col" className="num">
                Usual
              </th>
              <th scope="col">Source</th>
              <th scope="col" className="num">
                Set to
              </th>
              <th scope="col">By</th>
              {mayEdit && (
                <th scope="col">
                  <span className="sr-only">Acts</span>
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => {
              const own = limits.find((limit) => limit.key === row.key)
              return (
                <tr key={row.key}>
                  <th scope="row" className="font-normal">
                    {row.label}
                    <p className="small muted">{row.note}</p>
                    {editedKey === row.key && (
                      <LimitForm row={row} own={own} companyId={companyId} onClose={() => setEditedKey(null)} />
                    )}
                  </th>
                  <td className="num" data-label="usual">
                    {row.sense === 'at-most' ? '≤' : '≥'}{' '}
                    <QuantityText quantity={{ value: row.value, unit: row.unit }} />
                  </td>
                  <td className="small muted" data-label="source">
                    {row.source}
                  </td>
                  <td className="num" data-label="set here">
                    {own === undefined ? (
                      <span className="muted">not set</span>
                    ) : (
                      <strong>
                        {row.sense === 'at-most' ? '≤' : '≥'}{' '}
                        <QuantityText quantity={{ value: own.value, unit: row.unit }} />
                      </strong>
                    )}
                  </td>
                  <td className="small">
                    {own !== undefined && (
                      <>
                        {own.setBy.name}, <Timestamp at={own.setAt} dateOnly />
                        {own.note !== '' && <span className="block muted">{own.note}</span>}
                      </>
                    )}
                  </td>
                  {mayEdit && (
                    <td>
                      {editedKey !== row.key && (
                        <Button
                          weight="quiet"
                          aria-label={`${own === undefined ? 'Set' : 'Change'}: ${row.label}`}
                          onPress={() => setEditedKey(row.key)}
                        >
                          {own === undefined ? 'Set' : 'Change'}
                        </Button>
                      )}
                    </td>
                  )}
                </tr>
              )
            })}
          </tbody>
        </table>
      </TableFrame>
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
    <form className="form my-2" onSubmit={submit}>
      <FormNumber
        control={form.control}
        name="value"
        label={`${row.sense === 'at-most' ? 'At most' : 'At least'} (${row.unit})`}
        hint={`Between ${row.allowed.min} and ${row.allowed.max} ${row.unit}.`}
      />
      <FormText control={form.control} name="note" label="Reason for this limit" isOptional />
      <FormError refusal={refusal ?? removal.refusal} />
      <div className="row">
        <Button type="submit" weight="strong" isPending={isPending}>
          Save the limit
        </Button>
        {own !== undefined && (
          <Button
            isPending={removal.isPending}
            onPress={() => removal.send({ ...owner, key: row.key, seenVersion, value: null, note: '' }, onClose)}
          >
            Restore the default
          </Button>
        )}
        <Button weight="quiet" onPress={onClose}>
          Cancel
        </Button>
      </div>
    </form>
  )
}
