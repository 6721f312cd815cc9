import type { ComponentPropsWithoutRef, ReactNode } from 'react'
import { TableFrame } from './table-frame'

/** A column is declared once: its head on a wide screen, the label of each cell on a phone, and how its cells are set. */
export interface Column {
  readonly head: string
  /** Symbol of the unit, set after the head; cells then hold bare numbers. */
  readonly unit?: string | undefined
  /** Said under the head, on wide screens alone. */
  readonly headNote?: ReactNode
  /** For columns of buttons: the head is kept for assistive tools, and cells on a phone go without a label. */
  readonly isHeadHidden?: boolean
  /** Figures are set flush right, so that their digits stand under each other. */
  readonly isNumeric?: boolean
  /** Its cells name their rows. */
  readonly isRowHead?: boolean
  /** Class of the column's cells. */
  readonly className?: string
  /** Least width of the column, in rem. */
  readonly minWidthRem?: number
}

export type Columns = { readonly [id: string]: Column }

/** What stands in a row, by column. A column that is left out of the table leaves its cells out too. */
export type Cells<C extends Columns> = { readonly [Id in keyof C]: ReactNode }

type Attributes<Tag extends 'table' | 'tr'> = Omit<ComponentPropsWithoutRef<Tag>, 'children' | 'className'>

interface DataTableProps extends Attributes<'table'> {
  /** What the table holds, in a few words: its name for assistive tools where there is no caption. */
  readonly label: string
  readonly columns: Columns
  readonly caption?: ReactNode
  /** Inputs fill the cells. */
  readonly isGrid?: boolean
  /** On a phone each row becomes a block of labelled lines. Matrices, which are read across, scroll instead. */
  readonly isStacked?: boolean
  readonly className?: string
  readonly frameClassName?: string
  /** Rows below the rule at the foot. */
  readonly foot?: ReactNode
  /** `DataRow`s, or `RowGroup`s with `isGrouped`. */
  readonly children: ReactNode
  readonly isGrouped?: boolean
  /** Of a grid, which counts its rows for assistive tools. */
  readonly headRowIndex?: number
}

/** The one way to set a table. It scrolls by itself where it is too wide, and the keyboard reaches it then. */
export function DataTable({
  label,
  columns,
  caption,
  isGrid = false,
  isStacked = true,
  className,
  frameClassName,
  foot,
  children,
  isGrouped = false,
  headRowIndex,
  ...rest
}: DataTableProps) {
  const classes = ['ledger', ...(isGrid ? ['input-table'] : []), ...(className === undefined ? [] : [className])]
  return (
    <TableFrame label={label} {...(frameClassName === undefined ? {} : { className: frameClassName })}>
      <table
        {...(caption === undefined ? { 'aria-label': label } : {})}
        {...rest}
        className={classes.join(' ')}
        data-stack={isStacked ? '' : undefined}
      >
        {caption !== undefined && <caption>{caption}</caption>}
        <thead>
          <tr aria-rowindex={headRowIndex}>
            {Object.entries(columns).map(([id, column]) => (
              <ColumnHead key={id} column={column} />
            ))}
          </tr>
        </thead>
        {isGrouped ? children : <tbody>{children}</tbody>}
        {foot !== undefined && <tfoot>{foot}</tfoot>}
      </table>
    </TableFrame>
  )
}

function ColumnHead({
  column: { head, unit, headNote, isHeadHidden, isNumeric, className, minWidthRem },
}: {
  column: Column
}) {
  return (
    <th
      scope="col"
      className={join(isNumeric === true && 'num', className?.includes('no-print') === true && 'no-print')}
      style={minWidthRem === undefined ? undefined : { minWidth: `${minWidthRem}rem` }}
    >
      {isHeadHidden === true ? <span className="sr-only">{head}</span> : head}
      {unit !== undefined && <span className="unit">, {unit}</span>}
      {headNote !== undefined && <span className="head-note">{headNote}</span>}
    </th>
  )
}

interface DataRowProps<C extends Columns> extends Attributes<'tr'> {
  readonly columns: C
  readonly cells: Cells<C>
}

export function DataRow<C extends Columns>({ columns, cells, ...rest }: DataRowProps<C>) {
  return (
    <tr {...rest}>
      {Object.entries(columns).map(([id, column]) => (
        <Cell key={id} column={column}>
          {cells[id]}
        </Cell>
      ))}
    </tr>
  )
}

function Cell({ column, children }: { column: Column; children: ReactNode }) {
  const className = join(column.isNumeric === true && 'num', column.className)
  if (column.isRowHead === true) {
    return (
      <th scope="row" className={className}>
        {children}
      </th>
    )
  }
  const isEmpty = children === null || children === undefined || children === false || children === ''
  return (
    <td
      className={className}
      data-label={column.isHeadHidden === true ? undefined : getHeadLabel(column)}
      data-empty={isEmpty ? '' : undefined}
    >
      {children}
    </td>
  )
}

/** A row that says something about the row above or the group below it, over the whole width after `head`. */
export function NoteRow({ columns, head, children }: { columns: Columns; head?: ReactNode; children: ReactNode }) {
  const count = Object.keys(columns).length
  return (
    <tr className="note-row">
      {head !== undefined && <th scope="row">{head}</th>}
      <td colSpan={head === undefined ? count : count - 1}>{children}</td>
    </tr>
  )
}

/** A head over the rows that follow it. */
export function GroupRow({ columns, title, children }: { columns: Columns; title?: string; children: ReactNode }) {
  return (
    <tr>
      <th scope="rowgroup" colSpan={Object.keys(columns).length} title={title}>
        {children}
      </th>
    </tr>
  )
}

/** Rows that belong together, under a head of their own. */
export function RowGroup({ columns, head, children }: { columns: Columns; head: ReactNode; children: ReactNode }) {
  return (
    <tbody>
      <tr>
        <th scope="rowgroup" colSpan={Object.keys(columns).length} className="group-head">
          {head}
        </th>
      </tr>
      {children}
    </tbody>
  )
}

function getHeadLabel({ head, unit }: Column): string {
  return unit === undefined ? head : `${head}, ${unit}`
}

function join(...classes: readonly (string | false | undefined)[]): string | undefined {
  const kept = classes.filter((each) => each !== false && each !== undefined)
  return kept.length === 0 ? undefined : kept.join(' ')
}
