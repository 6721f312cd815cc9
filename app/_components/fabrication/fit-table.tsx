'use client'

import { Fragment, useState } from 'react'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { EnteredThickness } from '@/app/_components/ui/quantity'
import { TableFrame } from '@/app/_components/ui/table-frame'
import type { FabricatorFitView, FitCellView, FitParameterView, FitValueView } from '@/lib/data'
import { CapabilityMark } from './fit-words'

const FILTERS = [
  { value: 'attention', label: 'Outside and stretch' },
  { value: 'outside', label: 'Outside only' },
  { value: 'not-stated', label: 'Not stated' },
  { value: 'all', label: 'Every value' },
] as const
type Filter = (typeof FILTERS)[number]['value']

const EMPTY_WORDS: Readonly<Record<Filter, string>> = {
  attention: 'No value is outside the range, and none is at the stretch limit.',
  outside: 'No value is outside the range.',
  'not-stated': 'Every value is covered by a matrix.',
  all: 'The design states no value yet.',
}

/** Which verdicts each choice is about: a value is shown where one of its fabricators says so. */
const WANTED: Readonly<Record<Filter, readonly FitCellView['verdict'][]>> = {
  attention: ['outside', 'stretch'],
  outside: ['outside'],
  'not-stated': ['not-stated'],
  all: ['outside', 'stretch', 'not-stated', 'comfortable'],
}

interface FitTableProps {
  readonly fabricators: readonly FabricatorFitView[]
  readonly parameters: readonly FitParameterView[]
}

/** Each value of the design beside what each fabricator says of it. */
export function FitTable({ fabricators, parameters }: FitTableProps) {
  const [filter, setFilter] = useState<Filter>('attention')
  const shown = parameters.flatMap((parameter) => {
    const values = parameter.values.filter((value) => isShown(value, filter))
    return values.length === 0 ? [] : [{ ...parameter, values: mergeAlike(values) }]
  })
  const valueCount = parameters.reduce((sum, { values }) => sum + values.length, 0)
  const shownCount = shown.reduce(
    (sum, { values }) => sum + values.reduce((all, { places }) => all + places.length, 0),
    0,
  )
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
        <p className="empty">{EMPTY_WORDS[filter]}</p>
      ) : (
        <TableFrame label="Values of the design and what fabricators state">
          <table className="ledger" data-stack>
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
                          <td data-label="Value">{value.text}</td>
                          <td data-label="At">
                            {value.places.join(', ')}
                            {value.foilUm !== null && (
                              <span className="muted small">
                                {' '}
                                on <EnteredThickness valueUm={value.foilUm} /> foil
                              </span>
                            )}
                          </td>
                          {value.cells.map((cell, index) => (
                            <td key={fabricators[index]?.company.id} data-label={fabricators[index]?.company.name}>
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

const isShown = ({ cells }: FitValueView, filter: Filter) =>
  cells.some(({ verdict }) => WANTED[filter].includes(verdict))

/** Values that are the same and fare the same stand in one line with all their places. */
function mergeAlike(
  values: readonly FitValueView[],
): readonly (FitValueView & { readonly places: readonly string[] })[] {
  const merged = new Map<string, FitValueView & { readonly places: string[] }>()
  for (const value of values) {
    const key = JSON.stringify([value.text, value.foilUm, value.cells])
    const alike = merged.get(key)
    if (alike === undefined) merged.set(key, { ...value, places: [value.place] })
    else alike.places.push(value.place)
  }
  return [...merged.values()]
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
