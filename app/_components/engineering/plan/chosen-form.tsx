'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { digitsOfEnteredLength, getShownUnit, getUnitSymbol } from '@/lib/engine/units'
import type { PointMm } from '@/lib/plan'
import { type DrawnRef, fieldsOf, handlesOf, isClosedList, nodesOf, type PlanEdit } from '@/lib/plan/edit'
import { traceEntry } from '@/lib/plan/pick'
import { useDraft } from '../draft'
import { OutcomeList } from '../outcome-list'
import { listOutcomesAt } from '../outcomes'
import { BELONGS, nameEntry } from './belongs'
import { EntryFields } from './entry-fields'
import { handleKey } from './keys'
import { PlaceInput } from './place-input'
import { PLACE_KINDS } from './places'
import { LIST_WORDS } from './tools'
import type { Chosen, PlanEditor } from './use-plan-editor'

/** Numbers of what is chosen, beside the drawing, with the verdicts on what it draws. */
export function ChosenForm({ editor, chosen }: { editor: PlanEditor; chosen: Chosen }) {
  const { state, live } = useDraft()
  const fields = fieldsOf(editor.plan, chosen.ref)
  if (fields === null) return <p className="empty">It is no longer in the plan.</p>
  const { ref } = chosen
  const entry = ref.list === 'outline' ? null : editor.plan[ref.list].find(({ id }) => id === ref.id)
  const name =
    ref.list === 'outline' || entry === undefined || entry === null
      ? 'Outline'
      : nameEntry(state.design, ref.list, entry)
  const belongs = ref.list === 'outline' ? undefined : BELONGS[ref.list]
  const ownerId = belongs === undefined ? undefined : fields[belongs.field]
  const kind = ref.list === 'outline' ? undefined : PLACE_KINDS[ref.list]
  return (
    <div className="plan-chosen">
      <h3>
        {name} <span className="muted small">{LIST_WORDS[ref.list]}</span>
      </h3>
      {belongs !== undefined && ref.list !== 'outline' && (
        <label className="small plan-owner">
          {belongs.label}{' '}
          <select
            className="input"
            disabled={editor.isReadOnly}
            value={typeof ownerId === 'string' ? ownerId : ''}
            onChange={({ target: { value } }) =>
              editor.run(
                {
                  act: 'change',
                  list: ref.list,
                  id: ref.id,
                  fields: { [belongs.field]: value === '' ? null : value },
                } as PlanEdit,
                `${belongs.label} chosen.`,
              )
            }
          >
            {belongs.isOptional && <option value="">none yet</option>}
            {!belongs.isOptional && !belongs.list(state.design).some(({ id }) => id === ownerId) && (
              <option value={String(ownerId ?? '')}>
                {ownerId === '' ? 'Choose…' : `${String(ownerId)} (unknown)`}
              </option>
            )}
            {belongs.list(state.design).map((candidate) => (
              <option key={candidate.id} value={candidate.id}>
                {candidate.name}
              </option>
            ))}
          </select>
        </label>
      )}
      {ref.list !== 'outline' && <EntryFields editor={editor} list={ref.list} id={ref.id} />}
      <Points editor={editor} chosen={chosen} />
      {!editor.isReadOnly && (
        <div className="row">
          <Button onPress={() => editor.removeChosen({ ref, point: null })}>Remove {name}</Button>
        </div>
      )}
      {kind !== undefined && typeof ownerId === 'string' && ownerId !== '' && (
        <OutcomeList
          outcomes={listOutcomesAt(live.evaluation, kind, ownerId)}
          emptyText="No checklist item concerns this."
        />
      )}
    </div>
  )
}

/** Paths of more points are edited on the drawing, where one is chosen at a time. */
const MAX_POINTS_SHOWN = 60

function Points({ editor, chosen }: { editor: PlanEditor; chosen: Chosen }) {
  const { ref } = chosen
  const { unit: chosenUnit } = useLengthUnit()
  const unit = getShownUnit('mm', chosenUnit)
  const fields = fieldsOf(editor.plan, ref) ?? {}
  const handles = handlesOf(fields)
  const nodes = nodesOf(fields)
  const say = (mm: number) => digitsOfEnteredLength(mm, 'mm', unit)
  const isOpenEnd = (at: number) => !isClosedList(ref.list) && at === (nodes?.length ?? 0) - 1
  return (
    <>
      {nodes !== null && <EdgeActs editor={editor} refTo={ref} />}
      <ol className="plan-points">
        {handles.slice(0, MAX_POINTS_SHOWN).map(({ point, atMm }, index) => {
          const key = point.field === 'nodes' ? `nodes ${point.at}` : point.field
          const label = point.field === 'nodes' ? `Point ${point.at + 1}` : (PLACE_LABELS[point.field] ?? point.field)
          const via = point.field === 'nodes' ? (nodes?.[point.at]?.viaMm ?? null) : null
          const isThis =
            chosen.point?.field === point.field &&
            (point.field !== 'nodes' || (chosen.point.field === 'nodes' && chosen.point.at === point.at))
          return (
            <li key={key}>
              <button
                type="button"
                className="choice"
                aria-current={isThis ? 'true' : undefined}
                onClick={() => editor.choose({ ref, point })}
                onKeyDown={(event) => handleKey(event, editor, { ref, point }, atMm)}
              >
                {label}
              </button>
              {editor.isReadOnly ? (
                <span className="num">
                  {say(atMm[0])}, {say(atMm[1])} {getUnitSymbol(unit)}
                </span>
              ) : (
                <PlaceInput
                  label={label}
                  atMm={atMm}
                  unit={unit}
                  onChange={(toMm) => editor.run({ act: 'move-point', of: ref, point, toMm }, `${label} moved.`)}
                />
              )}
              {point.field === 'nodes' && !isOpenEnd(index) && via !== null && (
                <span className="small muted">
                  arc through {say(via[0])}, {say(via[1])}
                </span>
              )}
            </li>
          )
        })}
      </ol>
      {handles.length > MAX_POINTS_SHOWN && (
        <p className="small muted">and {handles.length - MAX_POINTS_SHOWN} more points, chosen on the drawing</p>
      )}
    </>
  )
}

const PLACE_LABELS: Readonly<Record<string, string>> = {
  fromMm: 'From',
  toMm: 'To',
  atMm: 'Place',
  markMm: 'Mark',
  firstContactMm: 'First contact',
}

/** How far a straight way bulges when it becomes an arc, as a share of its chord: a start that is then moved or typed. */
const FIRST_SAGITTA = 0.2

/** Acts on the segment that starts at the chosen point. */
function EdgeActs({ editor, refTo }: { editor: PlanEditor; refTo: DrawnRef }) {
  const { unit: chosenUnit } = useLengthUnit()
  const unit = getShownUnit('mm', chosenUnit)
  const [isTyping, setTyping] = useState(false)
  const { chosen, isReadOnly, run, plan } = editor
  if (isReadOnly || chosen?.point?.field !== 'nodes') return null
  const { at } = chosen.point
  const nodes = nodesOf(fieldsOf(plan, refTo) ?? {}) ?? []
  const [node, next] = [nodes[at], nodes[at + 1] ?? (isClosedList(refTo.list) ? nodes[0] : undefined)]
  if (node === undefined) return null
  const middle: PointMm | null = next === undefined ? null : bulge(node.atMm, next.atMm)
  const isTraced = traceEntry(plan, refTo) !== null
  return (
    <div className="row">
      {next !== undefined && isTraced && (
        <Button onPress={() => run({ act: 'split-edge', of: refTo, at, share: 0.5 }, 'Point added in the middle.')}>
          Add a point after {at + 1}
        </Button>
      )}
      <Button onPress={() => editor.removeChosen({ ref: refTo, point: { field: 'nodes', at } })}>
        Remove point {at + 1}
      </Button>
      {next !== undefined && node.viaMm === null && middle !== null && (
        <Button
          onPress={() => {
            run({ act: 'set-arc', of: refTo, at, viaMm: middle }, 'The segment is now an arc.')
            setTyping(true)
          }}
        >
          Make the segment an arc
        </Button>
      )}
      {node.viaMm !== null && (
        <>
          <Button onPress={() => run({ act: 'set-arc', of: refTo, at, viaMm: null }, 'The segment is now straight.')}>
            Make the segment straight
          </Button>
          <Button onPress={() => setTyping(!isTyping)}>Arc through…</Button>
        </>
      )}
      {isTyping && node.viaMm !== null && (
        <PlaceInput
          label="Arc through"
          atMm={node.viaMm}
          unit={unit}
          onChange={(viaMm) => run({ act: 'set-arc', of: refTo, at, viaMm }, 'Arc changed.')}
        />
      )}
    </div>
  )
}

function bulge([ax, ay]: PointMm, [bx, by]: PointMm): PointMm {
  const round = (mm: number) => Math.round(mm * 1e6) / 1e6 + 0
  return [round((ax + bx) / 2 + (by - ay) * FIRST_SAGITTA), round((ay + by) / 2 - (bx - ax) * FIRST_SAGITTA)]
}
