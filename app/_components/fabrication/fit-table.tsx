'use client'

import { Fragment, useState } from 'react'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { TableFrame } from '@/app/_components/ui/table-frame'
import type { FabricatorFitView, FitCellView, FitParameterView, FitValueView } from '@/lib/data'
import { CapabilityMark } from './fit-words'

const FILTERS = [
  { value: 'attention', label: 'Not comfortable' },
  { value: 'outside', label: 'Outside alone' },
  { value: 'all', label: 'Every value' },
] as const
type Filter = (typeof FILTERS)[number]['value']

interface FitTableProps {
  readonly fabricators: readonly FabricatorFitView[]
  readonly parameters: readonly FitParameterView[]
}

/** Each value of the design beside what each fabricator says of it. */
export function FitTable({ fabricators, parameters }: FitTableProps) {
  const [filter, setFilter] = useState<Filter>('attention')
  const shown = parameters.flatMap((parameter) => {
    const values = parameter.values.filter((value) => isShown(value, filter))
    return values.length === 0 ? [] : [{ ...parameter, values }]
  })
  const valueCount = parameters.reduce((sum, { values }) => sum + values.length, 0)
  const shownCount = shown.reduce((sum, { values }) => sum + values.length, 0)
  const groups = [...new Set(shown.map(({ group }) => group))]
  return (
    <>
      <div className="row no-print">
        <ChoiceGroup label="Values" value={filter} options={FILTERS} onChange={setFilter} />
        <span className="small muted" role="status">
          {shownCount} of {valueCount} values
        </span>
      </div>
      {shown.length === 0 ? (
        <p className="empty">
          {filter === 'outside' ? 'No value lies outside.' : 'Every value of the design is comfortable.'}
        </p>
      ) : (
        <TableFrame label="Values of the design and what fabricators say">
          <table className="ledger fit-table">
            <thead>
              <tr>
                <th scope="col">Value</th>
                <th scope="col">At</th>
                {fabricators.map(({ company }) => (
                  <th key={company.id} scope="col">
                    {company.name}
                  </th>
                ))}
              </tr>
            </thead>
            {groups.map((group) => (
              <tbody key={group}>
                <tr>
                  <th scope="rowgroup" colSpan={2 + fabricators.length} className="group-head">
                    {group}
                  </th>
                </tr>
                {shown
                  .filter((parameter) => parameter.group === group)
                  .map((parameter) => (
                    <Fragment key={parameter.key}>
                      <tr>
                        <th scope="rowgroup" colSpan={2 + fabricators.length} title={parameter.measuredAs}>
                          {parameter.name}
                        </th>
                      </tr>
                      {parameter.values.map((value) => (
                        <tr key={value.at}>
                          <td className="nowrap">{value.text}</td>
                          <td>
                            {value.place}
                            {value.foilUm !== null && <span className="muted small"> on {value.foilUm} um foil</span>}
                          </td>
                          {value.cells.map((cell, index) => (
                            <td key={fabricators[index]?.company.id}>
                              <FitCell cell={cell} />
                            </td>
                          ))}
                        </tr>
                      ))}
                    </Fragment>
                  ))}
              </tbody>
            ))}
          </table>
        </TableFrame>
      )}
    </>
  )
}

function isShown({ cells }: FitValueView, filter: Filter): boolean {
  if (filter === 'all') return true
  return cells.some(({ verdict }) => (filter === 'outside' ? verdict === 'outside' : verdict !== 'comfortable'))
}

function FitCell({ cell }: { cell: FitCellView }) {
  const limits = [
    cell.comfortable === null ? null : `comfortable ${cell.comfortable}`,
    cell.stretch === null ? null : `stretch ${cell.stretch}`,
  ].filter((part) => part !== null)
  return (
    <>
      <CapabilityMark verdict={cell.verdict} />
      {cell.change !== null && <p>{cell.change}</p>}
      {limits.length > 0 && (
        <p className="small muted">
          {limits.join(', ')}
          {cell.conditions !== '' && ` (${cell.conditions})`}
          {cell.note !== '' && `. ${cell.note}`}
        </p>
      )}
    </>
  )
}
