'use client'

import { useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { CheckboxField } from '@/app/_components/ui/choice-fields'
import { Notice } from '@/app/_components/ui/notices'
import { SelectField } from '@/app/_components/ui/select-field'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { listStiffeners } from '@/lib/engine'
import { countOf, digitsOfResultLength, formatEnteredLength, getShownUnit, getUnitSymbol } from '@/lib/engine/units'
import { type ImportedPlan, PLAN_ROLES, type PlanRole, planFromDrawing, suggestRoles } from '@/lib/plan/exchange'
import { pathData } from '@/lib/plan/picture'
import { useDraft } from '../draft'
import { readFile, sizeOf } from './read-file'
import { takeOver } from './take-over'

interface ImportFormProps {
  readonly name: string
  readonly bytes: Uint8Array
  readonly onDone: () => void
}

/** Curves come within this of themselves, and ends this near to each other are one. Our choice: finer than any outline is cut. */
const TOLERANCE_MM = 0.005
const MATCH_MM = 0.01
const MAX_ISSUES_SHOWN = 20
const LEFT_OUT = 'leave-out'

/** Unit and roles asked, what comes of them shown, and only then taken over. */
export default function ImportForm({ name, bytes, onDone }: ImportFormProps) {
  const { state, dispatch } = useDraft()
  const shownUnit = getShownUnit('mm', useLengthUnit().unit)
  const read = useMemo(() => readFile(name, bytes), [name, bytes])
  const [unitKey, setUnitKey] = useState<string | null>(read.ok ? read.unitKey : null)
  const [chosen, setChosen] = useState<ReadonlyMap<string, string>>(new Map())
  const [toOrigin, setToOrigin] = useState(false)
  const stiffeners = listStiffeners(state.design)
  const [stiffenerId, setStiffenerId] = useState(stiffeners.length === 1 ? (stiffeners[0]?.id ?? null) : null)
  const unit = read.ok ? read.units.find(({ key }) => key === unitKey) : undefined
  const drawing = useMemo(
    () => (read.ok && unit !== undefined ? read.draw(unit.mmPerUnit, TOLERANCE_MM) : null),
    [read, unit],
  )
  const suggestions = useMemo(() => (drawing === null ? [] : suggestRoles(drawing)), [drawing])
  const roleOf = (layer: string): string =>
    chosen.get(layer) ?? suggestions.find((each) => each.layer === layer)?.role ?? LEFT_OUT
  const roles = new Map(
    suggestions.flatMap(({ layer }) => {
      const role = roleOf(layer)
      return role === LEFT_OUT ? [] : [[layer, role as PlanRole] as const]
    }),
  )
  const imported = drawing === null ? null : planFromDrawing(drawing, roles, { matchMm: MATCH_MM, toOrigin })
  if (!read.ok) {
    return (
      <Notice tone="refused" role="alert">
        <p>The file was not read: {read.reason}. Nothing was changed.</p>
      </Notice>
    )
  }
  const whole = read.draw(1, TOLERANCE_MM)
  const issues = [...(drawing?.issues ?? []), ...(imported?.issues ?? [])]
  const takeIt = () => {
    if (imported === null) return
    dispatch({ type: 'replace', design: takeOver(state.design, imported, stiffenerId) })
    onDone()
  }
  return (
    <>
      <p>{read.says}</p>
      <SelectField
        label="Unit of the file"
        value={unitKey}
        onChange={setUnitKey}
        placeholder="Choose the unit…"
        options={read.units.map(({ key, label, mmPerUnit }) => {
          const [width, height] = sizeOf(whole).map((units) => digitsOfResultLength(units * mmPerUnit, 'mm', shownUnit))
          return { value: key, label: `${label}: ${width} × ${height} ${getUnitSymbol(shownUnit)} overall` }
        })}
      />
      {drawing !== null && imported !== null && (
        <>
          <fieldset className="stack">
            <legend>What the layers are</legend>
            {suggestions.map(({ layer, strokes, reason }) => (
              <SelectField
                key={layer}
                label={`${layer} (${countOf(strokes, 'stroke')})`}
                hint={chosen.has(layer) ? undefined : reason}
                value={roleOf(layer)}
                onChange={(role) => setChosen(new Map(chosen).set(layer, role))}
                options={[
                  { value: LEFT_OUT, label: 'Leave it out' },
                  ...PLAN_ROLES.map(({ key, label }) => ({ value: key as string, label })),
                ]}
              />
            ))}
          </fieldset>
          <CheckboxField isSelected={toOrigin} onChange={setToOrigin}>
            Put the lower left corner of the outline at the origin
          </CheckboxField>
          {imported.stiffeners.length > 0 && stiffeners.length > 0 && (
            <SelectField
              label="Stiffener that the shapes are of"
              value={stiffenerId}
              onChange={setStiffenerId}
              placeholder="Left out until you choose…"
              options={stiffeners.map(({ id, name: label }) => ({ value: id, label }))}
            />
          )}
          {imported.stiffeners.length > 0 && stiffeners.length === 0 && (
            <Notice tone="caution">
              <p>
                The construction has no stiffener layer: the shapes of stiffeners are left out. Add the layer first to
                take them over.
              </p>
            </Notice>
          )}
          <Preview imported={imported} />
          <p className="small">
            Splines and ellipses come as arcs within {formatEnteredLength(TOLERANCE_MM, 'mm', shownUnit)} of themselves;
            ends within {formatEnteredLength(MATCH_MM, 'mm', shownUnit)} of each other are joined.
          </p>
          {issues.length > 0 && (
            <details open>
              <summary>{countOf(issues.length, 'remark')} on the file</summary>
              <ul className="small">
                {issues.slice(0, MAX_ISSUES_SHOWN).map(({ line, message }, index) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: remarks may be alike, and their order is that of the file.
                  <li key={index}>
                    {line !== null && `Line ${line}: `}
                    {message}
                  </li>
                ))}
                {issues.length > MAX_ISSUES_SHOWN && <li>and {issues.length - MAX_ISSUES_SHOWN} more</li>}
              </ul>
            </details>
          )}
          <div className="row">
            <Button weight="strong" onPress={takeIt} isDisabled={countShapes(imported) === 0}>
              Add to the plan
            </Button>
            <Button onPress={onDone}>Cancel</Button>
          </div>
          <p className="small muted">
            An outline takes the place of the present one; all else is added. Nothing is stored until you save, and undo
            takes it back.
          </p>
        </>
      )}
    </>
  )
}

const LISTS = [
  ['cutOuts', 'cut-out'],
  ['dividingLines', 'dividing line'],
  ['bendLines', 'bend line'],
  ['stiffeners', 'stiffener'],
  ['holes', 'hole'],
  ['coverlayOpenings', 'coverlay opening'],
  ['components', 'component'],
  ['slits', 'slit'],
] as const

const countShapes = (imported: ImportedPlan): number =>
  (imported.outline === null ? 0 : 1) + LISTS.reduce((sum, [key]) => sum + imported[key].length, 0)

function Preview({ imported }: { imported: ImportedPlan }) {
  const closed = [
    imported.outline ?? [],
    ...imported.cutOuts,
    ...imported.stiffeners,
    ...imported.coverlayOpenings,
    ...imported.components,
  ]
  const open = [...imported.dividingLines, ...imported.slits]
  const points = [...closed, ...open].flat().map(({ atMm }) => atMm)
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => -y)]
  const least = (list: readonly number[]) => list.reduce((a, b) => Math.min(a, b), Infinity)
  const most = (list: readonly number[]) => list.reduce((a, b) => Math.max(a, b), -Infinity)
  const parts = LISTS.flatMap(([key, word]) =>
    imported[key].length === 0 ? [] : [countOf(imported[key].length, word)],
  )
  const [x, y] = [least(xs), least(ys)]
  const [width, height] = [most(xs) - x, most(ys) - y]
  const pad = Math.max(width, height) * 0.05 || 1
  return (
    <figure>
      {points.length > 0 && (
        <svg
          viewBox={`${x - pad} ${y - pad} ${width + 2 * pad} ${height + 2 * pad}`}
          role="img"
          aria-label="What the file adds"
          className="plan-preview"
        >
          <path d={closed.map((nodes) => pathData(nodes, true)).join('')} className="plan-outline" />
          <path d={open.map((nodes) => pathData(nodes, false)).join('')} className="plan-dividing" />
          {imported.bendLines.map(([a, b]) => (
            <line key={`${a} ${b}`} x1={a[0]} y1={-a[1]} x2={b[0]} y2={-b[1]} className="plan-bend" />
          ))}
        </svg>
      )}
      <figcaption className="small">
        {[imported.outline === null ? 'no outline' : 'an outline', ...parts].join(', ')}
      </figcaption>
    </figure>
  )
}
