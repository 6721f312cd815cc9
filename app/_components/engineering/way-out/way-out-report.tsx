'use client'

import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Notice } from '@/app/_components/ui/notices'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import type { WayOut } from '@/lib/engine/remedies'
import { BASIS_WORDS } from '@/lib/engine/results'
import { countOf } from '@/lib/engine/units'
import { findVerdictDirection } from '@/lib/review'

interface WayOutReportProps {
  readonly wayOut: WayOut
  /** Null where it cannot be applied. */
  readonly onApply: (() => void) | null
  readonly whyNot: string
}

/** What would be changed, what it asks of others, every effect on the checklist, and what is left to people. */
export function WayOutReport({ wayOut, onApply, whyNot }: WayOutReportProps) {
  const { changes, left, forPeople, inArtwork, isStopped } = wayOut
  const relaxed = changes.flatMap(({ relaxes }) => relaxes ?? [])
  return (
    <div className="stack">
      <p className="lede">{describeResult(wayOut)}</p>
      {isStopped && (
        <Notice tone="caution">
          The search was stopped: this is the best it had found. Search again for the rest.
        </Notice>
      )}
      {relaxed.length > 0 && (
        <Notice tone="caution">
          <p>
            <strong>Needs that are relaxed:</strong> somebody has to agree to {relaxed.length === 1 ? 'this' : 'these'}.
          </p>
          <ul className="changes">
            {relaxed.map((need) => (
              <li key={need}>{need}</li>
            ))}
          </ul>
        </Notice>
      )}
      {(onApply !== null || whyNot !== '') && (
        <div className="row">
          {onApply !== null && (
            <Button weight="strong" onPress={onApply}>
              Apply {countOf(changes.length, 'change')} to the draft
            </Button>
          )}
          {whyNot !== '' && <span className="small muted">{whyNot}</span>}
        </div>
      )}
      {changes.length > 0 && <ChangeTable wayOut={wayOut} />}
      {left.length > 0 && <ItemList title={`Still failing: ${left.length}`} items={left} />}
      {forPeople.length > 0 && <ItemList title={`For people to settle: ${forPeople.length}`} items={forPeople} />}
      {inArtwork.length > 0 && (
        <ItemList title={`To be drawn again in the artwork: ${inArtwork.length}`} items={inArtwork} />
      )}
      {changes.length > 0 && <EffectTable moved={wayOut.moved} />}
    </div>
  )
}

function describeResult({ changes, failing, left }: WayOut): string {
  if (failing.before === 0) return 'Nothing fails that is calculated from the design.'
  if (changes.length === 0) return `No change was found for the ${countOf(failing.before, 'item')} that fail.`
  const clears =
    left.length === 0
      ? `clear all ${countOf(failing.before, 'item')} that fail by calculation`
      : `bring what fails by calculation from ${failing.before} to ${countOf(failing.after, 'item')}`
  return `${countOf(changes.length, 'change')} ${clears}.`
}

const CHANGE_COLUMNS = {
  change: { head: 'Change', isRowHead: true },
  detail: { head: 'From and to' },
  note: { head: 'Check before you release' },
} satisfies Columns

function ChangeTable({ wayOut: { changes } }: { wayOut: WayOut }) {
  return (
    <DataTable label="Changes" columns={CHANGE_COLUMNS}>
      {changes.map((change) => (
        <DataRow
          key={change.id}
          columns={CHANGE_COLUMNS}
          cells={{
            change: change.title,
            detail: change.detail,
            note: [...(change.relaxes === null ? [] : ['Relaxes a need.']), ...change.cautions].join(' '),
          }}
        />
      ))}
    </DataTable>
  )
}

function ItemList({ title, items }: { title: string; items: WayOut['left'] }) {
  return (
    <section className="stack" aria-label={title}>
      <h3>{title}</h3>
      <ul className="plain-list">
        {items.map(({ itemId, headline, basis, severity }) => (
          <li key={itemId}>
            {headline}{' '}
            <span className="small muted">
              {severity}, {BASIS_WORDS[basis]}
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}

const EFFECT_COLUMNS = {
  item: { head: 'Item', isRowHead: true, className: 'font-normal' },
  before: { head: 'Before', className: 'nowrap' },
  after: { head: 'After', className: 'nowrap' },
  found: { head: 'What the item then says' },
} satisfies Columns

/** Better first, then what changed otherwise. */
function EffectTable({ moved }: Pick<WayOut, 'moved'>) {
  const ordered = moved.toSorted((a, b) => Number(isWorse(a)) - Number(isWorse(b)))
  return (
    <section className="stack" aria-label="Effects on the checklist">
      <h3>Effects on the checklist</h3>
      <DataTable label="Effects on the checklist" columns={EFFECT_COLUMNS}>
        {ordered.map(({ itemId, question, before, after, headline }) => (
          <DataRow
            key={itemId}
            columns={EFFECT_COLUMNS}
            cells={{
              item: question,
              before: <VerdictMark verdict={before} />,
              after: <VerdictMark verdict={after} />,
              found: headline,
            }}
          />
        ))}
      </DataTable>
    </section>
  )
}

const isWorse = ({ before, after }: WayOut['moved'][number]): boolean => findVerdictDirection(before, after) === 'worse'
