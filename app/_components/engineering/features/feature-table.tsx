'use client'

import { memo, type ReactNode, useCallback } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { PageSection } from '@/app/_components/ui/section'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import {
  type Design,
  type Features,
  MARKABLE_LISTS,
  type MarkableList,
  type Place as ResultPlace,
  type Verdict,
} from '@/lib/engine'
import { capitalise } from '@/lib/engine/units'
import { makePlaces, type Place, TextCell, useUnitLabels } from '../cells'
import {
  type DraftChoices,
  makeFreshId,
  useDraft,
  useDraftChoices,
  useEdit,
  useFieldNotes,
  withoutDrawnOfRemoved,
} from '../draft'
import { NoneMark } from '../none-mark'
import { findVerdictAt } from '../outcomes'
import { RowAct } from '../row-act'

/** Keys of the feature lists. */
export type FeatureListKey = {
  [K in keyof Features]: Features[K] extends readonly { id: string; name: string }[] ? K : never
}[keyof Features]

export type FeatureOf<K extends FeatureListKey> = Features[K][number]

export interface FeatureColumn<T> {
  readonly key: string
  readonly label: string
  readonly isNumeric?: boolean
  /** A dimension in plan: its head names the unit that it is read in. */
  readonly isPlanLength?: boolean
  readonly render: (
    row: T,
    set: (change: Partial<T>) => void,
    at: (...field: (string | number)[]) => Place,
  ) => ReactNode
}

interface FeatureTableProps<K extends FeatureListKey> {
  readonly listKey: K
  readonly title: string
  /** Kind of place in results, to show a verdict beside the row; null where results name no such rows. */
  readonly placeKind: ResultPlace['kind'] | null
  readonly columns: readonly FeatureColumn<FeatureOf<K>>[]
  /** The rest of a new row; unknowns are null. */
  readonly makeRow: (named: { id: string; name: string }) => FeatureOf<K>
  /** What one row is called in buttons: `hole`. */
  readonly singular: string
  readonly idPrefix: string
  /** Rows where they do not come from the list alone; such a table has no button to add one. */
  readonly listRows?: (design: Design) => readonly FeatureOf<K>[]
  /** Fields of a new row that the table chose by itself: they are marked until somebody confirms them. */
  readonly assumedFields?: readonly string[]
  /** Shown while the list is empty. */
  readonly emptyText: string
}

/** Columns of every feature table, apart from the keys of its own. */
const NAME = 'row:name'
const VERDICT = 'row:verdict'
const ACTS = 'row:acts'

/** One kind of feature as a dense table: name, its columns, the verdict, and acts on rows. */
export function FeatureTable<K extends FeatureListKey>(props: FeatureTableProps<K>) {
  const { listKey, title, columns, singular, emptyText, makeRow, idPrefix, listRows, assumedFields = [] } = props
  const { state, live, isReadOnly } = useDraft()
  const choices = useDraftChoices()
  const edit = useEdit()
  const units = useUnitLabels()
  const rows: readonly FeatureOf<K>[] = listRows?.(state.design) ?? state.design.features[listKey]
  const setRows = useCallback(
    (key: string, change: (rows: readonly FeatureOf<K>[]) => readonly FeatureOf<K>[]) =>
      edit(key, (design) =>
        withoutDrawnOfRemoved(design, {
          ...design,
          features: { ...design.features, [listKey]: change(design.features[listKey]) },
        }),
      ),
    [edit, listKey],
  )
  const add = () =>
    edit(`add-${listKey}-${rows.length}`, (design) => {
      const present: readonly FeatureOf<K>[] = design.features[listKey]
      const id = makeFreshId(idPrefix, present)
      const name = `${capitalise(singular)} ${present.length + 1}`
      return {
        ...design,
        features: {
          ...design.features,
          none: design.features.none.filter((marked) => marked !== listKey),
          [listKey]: [...present, makeRow({ id, name })],
        },
        assumed: [...design.assumed, ...assumedFields.map((field) => `${listKey}.${id}.${field}`)],
      }
    })
  const tableColumns: Columns = {
    [NAME]: { head: 'Name', className: 'cell-name' },
    ...Object.fromEntries(
      columns.map(({ key, label, isNumeric = false, isPlanLength = false }) => [
        key,
        {
          head: label,
          ...(isPlanLength ? { unit: units.plan } : {}),
          ...(isNumeric ? { isNumeric, className: 'cell-number' } : {}),
        },
      ]),
    ),
    ...(props.placeKind === null ? {} : { [VERDICT]: { head: 'Verdict' } }),
    ...(isReadOnly ? {} : { [ACTS]: { head: 'Acts', isHeadHidden: true, className: 'row-acts no-print' } }),
  }
  return (
    <PageSection
      title={title}
      actions={!isReadOnly && listRows === undefined && <Button onPress={add}>Add {singular}</Button>}
    >
      {rows.length === 0 ? (
        <>
          <p className="empty">{emptyText}</p>
          {isMarkable(listKey) && <NoneMark list={listKey} label={`The part has no ${title.toLowerCase()}`} />}
        </>
      ) : (
        <DataTable label={title} columns={tableColumns} isGrid>
          {rows.map((row, index) => (
            <FeatureRow
              key={row.id}
              listKey={listKey}
              idPrefix={idPrefix}
              columns={columns}
              tableColumns={tableColumns}
              tableMakeUp={`${isReadOnly} ${units.plan} ${units.thickness}`}
              choices={choices}
              row={row}
              index={index}
              count={state.design.features[listKey].length}
              verdict={props.placeKind === null ? null : findVerdictAt(live.evaluation, props.placeKind, row.id)}
              setRows={setRows}
            />
          ))}
        </DataTable>
      )}
    </PageSection>
  )
}

interface FeatureRowProps<K extends FeatureListKey>
  extends Pick<FeatureTableProps<K>, 'listKey' | 'idPrefix' | 'columns'> {
  readonly tableColumns: Columns
  /** All that columns of the table go by, besides the choices. */
  readonly tableMakeUp: string
  /** All that the columns' own cells choose among. */
  readonly choices: DraftChoices
  readonly row: FeatureOf<K>
  readonly index: number
  readonly count: number
  readonly verdict: Verdict | null
  readonly setRows: (key: string, change: (rows: readonly FeatureOf<K>[]) => readonly FeatureOf<K>[]) => void
}

/** Columns are made with each table, and say the same for as long as what they are made from does. */
function isSameRow<K extends FeatureListKey>(before: FeatureRowProps<K>, now: FeatureRowProps<K>): boolean {
  return (['row', 'index', 'count', 'verdict', 'choices', 'tableMakeUp', 'listKey', 'setRows'] as const).every(
    (key) => before[key] === now[key],
  )
}

/** Drawn anew where something of its own changes, and not with every key. */
const FeatureRow = memo(DrawnRow, isSameRow) as typeof DrawnRow

function DrawnRow<K extends FeatureListKey>({
  listKey,
  columns,
  tableColumns,
  idPrefix,
  row,
  index,
  count,
  verdict,
  setRows,
}: FeatureRowProps<K>) {
  const { issueByPath } = useFieldNotes()
  const at = makePlaces(['features', listKey, index], `${listKey}.${row.id}`, row.name || `row ${index + 1}`)
  const setField = (key: string, change: Partial<FeatureOf<K>>) =>
    setRows(`${listKey}.${row.id}.${key}`, (rows) =>
      // A row that stood for something of the construction is written down with its first detail.
      rows.some(({ id }) => id === row.id)
        ? rows.map((present) => (present.id === row.id ? { ...present, ...change } : present))
        : [...rows, { ...row, ...change }],
    )
  const ownIssue = issueByPath.get(at('id').path)
  return (
    <DataRow
      columns={tableColumns}
      cells={{
        [NAME]: (
          <>
            <TextCell
              label="Name"
              at={at('name')}
              value={row.name}
              onChange={(name) => setField('name', { name } as Partial<FeatureOf<K>>)}
            />
            {ownIssue !== undefined && <span className="field-error cell-error">{ownIssue}</span>}
          </>
        ),
        ...Object.fromEntries(
          columns.map((column) => [column.key, column.render(row, (change) => setField(column.key, change), at)]),
        ),
        ...(VERDICT in tableColumns
          ? { [VERDICT]: verdict === null ? <span className="muted">–</span> : <VerdictMark verdict={verdict} /> }
          : {}),
        [ACTS]: (
          <>
            <RowAct
              label={`Copy ${row.name}`}
              onPress={() =>
                setRows(`copy-${row.id}-${count}`, (rows) => [
                  ...rows.slice(0, index + 1),
                  ...(rows.some(({ id }) => id === row.id) ? [] : [row]),
                  { ...row, id: makeFreshId(idPrefix, rows), name: `${row.name.slice(0, 110)} copy` },
                  ...rows.slice(index + 1),
                ])
              }
            >
              copy
            </RowAct>
            <RowAct
              label={`Remove ${row.name}`}
              onPress={() => setRows(`remove-${row.id}`, (rows) => rows.filter((present) => present.id !== row.id))}
            >
              remove
            </RowAct>
          </>
        ),
      }}
    />
  )
}

const isMarkable = (listKey: FeatureListKey): listKey is FeatureListKey & MarkableList =>
  (MARKABLE_LISTS as readonly string[]).includes(listKey)
