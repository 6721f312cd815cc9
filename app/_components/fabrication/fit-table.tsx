'use client'

import Link from 'next/link'
import { Fragment, useState } from 'react'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { type Columns, DataRow, DataTable, GroupRow, RowGroup } from '@/app/_components/ui/data-table'
import { EnteredThickness } from '@/app/_components/ui/quantity'
import { paths } from '@/lib/addresses'
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
  /** Where the reader may ask. */
  readonly place: { readonly projectId: string; readonly revisionId: string } | null
}

const getFabricatorColumn = (companyId: string | undefined): string => `company ${companyId}`

/** Each value of the design beside what each fabricator says of it. */
export function FitTable({ fabricators, parameters, place }: FitTableProps) {
  const askHref =
    place === null
      ? null
      : (key: string) => paths.ask(place.projectId, place.revisionId, { kind: 'parameter', id: key })
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
  const columns: Columns = {
    value: { head: 'Value' },
    at: { head: 'At' },
    ...Object.fromEntries(fabricators.map(({ company }) => [getFabricatorColumn(company.id), { head: company.name }])),
  }
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
        <DataTable label="Values of the design and what fabricators state" columns={columns} isGrouped>
          {groups.map((group) => (
            <RowGroup key={group} columns={columns} head={group}>
              {shown
                .filter((parameter) => parameter.group === group)
                .map((parameter) => (
                  <Fragment key={parameter.key}>
                    <GroupRow columns={columns} title={parameter.measuredAs}>
                      {parameter.name} <span className="small muted font-normal">{parameter.question}</span>{' '}
                      {askHref !== null && (
                        <Link
                          className="small"
                          href={askHref(parameter.key)}
                          aria-label={`Ask about ${parameter.name}`}
                        >
                          Ask
                        </Link>
                      )}
                    </GroupRow>
                    {parameter.values.map((value) => (
                      <DataRow
                        key={value.at}
                        columns={columns}
                        cells={{
                          value: value.text,
                          at: (
                            <>
                              {value.places.join(', ')}
                              {value.foilUm !== null && (
                                <span className="muted small">
                                  {' '}
                                  on <EnteredThickness valueUm={value.foilUm} /> foil
                                </span>
                              )}
                            </>
                          ),
                          ...Object.fromEntries(
                            value.cells.map((cell, index) => [
                              getFabricatorColumn(fabricators[index]?.company.id),
                              <FitCell key={cell.verdict} cell={cell} />,
                            ]),
                          ),
                        }}
                      />
                    ))}
                  </Fragment>
                ))}
            </RowGroup>
          ))}
        </DataTable>
      )}
    </>
  )
}

const isShown = ({ cells }: FitValueView, filter: Filter) =>
  cells.some(({ verdict }) => WANTED[filter].includes(verdict))

/** Equal values with equal outcomes share one line that lists all their places. */
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
