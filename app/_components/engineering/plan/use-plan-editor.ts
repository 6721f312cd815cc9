'use client'

import { useCallback, useMemo, useRef, useState } from 'react'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { digitsOfResultLength, getShownUnit, getUnitSymbol } from '@/lib/engine/units'
import type { PointMm } from '@/lib/plan'
import { applyEdit, type DrawnRef, type PlanEdit, type PlanListKey, type PointRef } from '@/lib/plan/edit'
import { useDraft, useEdit } from '../draft'
import { addDrawn, type Owner, planOf } from './additions'
import { BELONGS } from './belongs'
import type { Face } from './faces'
import { LIST_WORDS, leastPoints, pointsOf, type Tool } from './tools'

/** What is chosen: something drawn, or one point of it. */
export interface Chosen {
  readonly ref: DrawnRef
  readonly point: PointRef | null
}

/** How far a key moves something, unless stated otherwise. */
const DEFAULT_STEP_MM = 1

export type PlanEditor = ReturnType<typeof usePlanEditor>

/** State of the editor that is no part of the design: what is chosen, what is being drawn, what is shown. */
export function usePlanEditor() {
  const { state, dispatch, isReadOnly } = useDraft()
  const edit = useEdit()
  const unit = getShownUnit('mm', useLengthUnit().unit)
  const plan = planOf(state.design)
  const [chosen, choose] = useState<Chosen | null>(null)
  const [tool, setTool] = useState<Tool | null>(null)
  const [sketch, setSketch] = useState<readonly PointMm[]>([])
  const [owner, setOwner] = useState<Owner>({ kind: 'new' })
  const [gridMm, setGrid] = useState<number | null>(DEFAULT_STEP_MM)
  const [hidden, setHidden] = useState<ReadonlySet<PlanListKey | 'outline'>>(new Set())
  const [hiddenFaces, setHiddenFaces] = useState<ReadonlySet<Face>>(new Set())
  const [said, say] = useState('')
  const gestures = useRef(0)
  const inGesture = useRef<{ key: string; undo: PlanEdit } | null>(null)

  /** One step of undo: an edit that is refused says why and changes nothing. */
  const run = useCallback(
    (act: PlanEdit, says: string): boolean => {
      const result = applyEdit(plan, act)
      if (!result.ok) {
        say(`Not done: ${result.reason}.`)
        return false
      }
      gestures.current += 1
      edit(`plan.${gestures.current}`, (design) => ({ ...design, plan: result.plan }))
      dispatch({ type: 'settle' })
      say(says)
      return true
    },
    [plan, edit, dispatch],
  )

  const start = useCallback(
    (next: Tool | null) => {
      setTool(next)
      setSketch([])
      const belongs = next === null || next.key === 'outline' ? undefined : BELONGS[next.key]
      const [first] = belongs?.list(state.design) ?? []
      setOwner(
        next?.key === 'bendLines' || next?.key === 'areas'
          ? { kind: 'new' }
          : first === undefined || belongs?.isOptional === true
            ? { kind: 'none' }
            : { kind: 'id', id: first.id },
      )
      say(next === null ? '' : `Drawing: ${next.singular}.`)
    },
    [state.design],
  )

  const finish = useCallback(
    (points: readonly PointMm[] = sketch) => {
      if (tool === null) return
      if (points.length < leastPoints(tool)) {
        say(`Not done: ${tool.singular} needs at least ${leastPoints(tool)} points.`)
        return
      }
      const belongs = tool.key === 'outline' ? undefined : BELONGS[tool.key]
      if (belongs !== undefined && !belongs.isOptional && owner.kind === 'none') {
        say(
          `Not done: choose the ${belongs.label.toLowerCase()} that it is, or add one on the ${belongs.addedOn} page.`,
        )
        setSketch([])
        return
      }
      const nodes = points.map((atMm) => ({ atMm, viaMm: null }))
      gestures.current += 1
      edit(`plan.${gestures.current}`, (design) => addDrawn(design, tool, nodes, owner))
      dispatch({ type: 'settle' })
      say(`Drawn: ${tool.singular}. Undo takes it back.`)
      setSketch([])
      if (tool.takes !== 'point') setTool(null)
    },
    [tool, sketch, owner, edit, dispatch],
  )

  const addPoint = useCallback(
    (atMm: PointMm) => {
      if (tool === null) return
      const [first] = sketch
      const closes =
        tool.takes === 'loop' &&
        sketch.length >= leastPoints(tool) &&
        first !== undefined &&
        first[0] === atMm[0] &&
        first[1] === atMm[1]
      if (closes) {
        finish()
        return
      }
      const points = [...sketch, atMm]
      setSketch(points)
      if (points.length === pointsOf(tool)) finish(points)
    },
    [tool, sketch, finish],
  )

  /** A gesture shows itself as it goes and is one step of undo. */
  const drag = useCallback(
    (base: typeof plan, act: PlanEdit) => {
      const result = applyEdit(base, act)
      if (!result.ok) return
      if (inGesture.current === null) {
        gestures.current += 1
        inGesture.current = { key: `plan.${gestures.current}`, undo: result.undo }
      }
      inGesture.current = { ...inGesture.current, undo: result.undo }
      edit(inGesture.current.key, (design) => ({ ...design, plan: result.plan }))
    },
    [edit],
  )
  const endDrag = useCallback(
    (isKept: boolean) => {
      const gesture = inGesture.current
      inGesture.current = null
      if (gesture === null) return
      if (!isKept) {
        edit(gesture.key, (design) => {
          const back = applyEdit(planOf(design), gesture.undo)
          return back.ok ? { ...design, plan: back.plan } : design
        })
      }
      dispatch({ type: 'settle' })
      say(isKept ? 'Moved. Undo takes it back.' : 'Put back.')
    },
    [edit, dispatch],
  )

  const moveChosen = useCallback(
    ({ ref, point }: Chosen, byMm: PointMm, fromMm: PointMm | null) => {
      const act: PlanEdit =
        point === null || fromMm === null
          ? { act: 'move', of: ref, byMm }
          : { act: 'move-point', of: ref, point, toMm: [fromMm[0] + byMm[0], fromMm[1] + byMm[1]] }
      const [x, y] = byMm.map((mm) => digitsOfResultLength(mm, 'mm', unit))
      run(act, `Moved by ${x}, ${y} ${getUnitSymbol(unit)}.`)
    },
    [run, unit],
  )

  const removeChosen = useCallback(
    ({ ref, point }: Chosen) => {
      if (point?.field === 'nodes') {
        run({ act: 'remove-point', of: ref, at: point.at }, 'Point removed.')
        choose({ ref, point: null })
        return
      }
      const act: PlanEdit =
        ref.list === 'outline'
          ? { act: 'set', field: 'outline', value: null }
          : { act: 'remove', list: ref.list, id: ref.id }
      if (run(act, `Removed from ${LIST_WORDS[ref.list].toLowerCase()}. Undo brings it back.`)) choose(null)
    },
    [run],
  )

  return useMemo(
    () => ({
      plan,
      isReadOnly,
      chosen,
      choose,
      tool,
      start,
      sketch,
      addPoint,
      dropPoint: () => setSketch((points) => points.slice(0, -1)),
      finish,
      owner,
      setOwner,
      gridMm,
      setGrid,
      stepMm: gridMm ?? DEFAULT_STEP_MM,
      hidden,
      setHidden,
      hiddenFaces,
      setHiddenFaces,
      said,
      run,
      drag,
      endDrag,
      moveChosen,
      removeChosen,
    }),
    [
      plan,
      isReadOnly,
      chosen,
      tool,
      start,
      sketch,
      addPoint,
      finish,
      owner,
      gridMm,
      hidden,
      hiddenFaces,
      said,
      run,
      drag,
      endDrag,
      moveChosen,
      removeChosen,
    ],
  )
}
