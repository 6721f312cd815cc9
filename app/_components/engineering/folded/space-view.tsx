'use client'

import { useEffect, useRef, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import type { ShapeBody } from '@/lib/engine/folding'
import { makeSpaceScene, type Projection, type SpaceScene } from './space-scene'

const PROJECTIONS = [
  { value: 'parallel', label: 'Parallel' },
  { value: 'perspective', label: 'Perspective' },
] as const

/** Turned by this much for each press of a button or an arrow key. */
const TURN_DEG = 15

interface SpaceViewProps {
  readonly bodies: readonly ShapeBody[]
  readonly description: string
}

/** The folded part to turn by pointer, button or arrow key. Loaded only where it is asked for. */
export default function SpaceView({ bodies, description }: SpaceViewProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const scene = useRef<SpaceScene | null>(null)
  const [projection, setProjection] = useState<Projection>('parallel')
  const [isPossible, setPossible] = useState(true)
  const shown = useRef(bodies)
  shown.current = bodies

  useEffect(() => {
    if (canvas.current === null) return
    const made = makeSpaceScene(canvas.current, shown.current)
    scene.current = made
    setPossible(made !== null)
    return () => {
      scene.current = null
      made?.dispose()
    }
  }, [])
  useEffect(() => scene.current?.show(bodies), [bodies])
  useEffect(() => scene.current?.project(projection), [projection])

  if (!isPossible) {
    return (
      <p className="empty">
        This browser draws nothing in space (WebGL 2 is missing). The drawing shows the same state.
      </p>
    )
  }
  const turn = (rightDeg: number, upDeg: number) => scene.current?.turn(rightDeg, upDeg)
  return (
    <div className="stack">
      <div className="fold-acts">
        <ChoiceGroup label="Projection" options={PROJECTIONS} value={projection} onChange={setProjection} />
        <Button onPress={() => turn(-TURN_DEG, 0)}>Turn left</Button>
        <Button onPress={() => turn(TURN_DEG, 0)}>Turn right</Button>
        <Button onPress={() => turn(0, TURN_DEG)}>Raise</Button>
        <Button onPress={() => turn(0, -TURN_DEG)}>Lower</Button>
        <Button onPress={() => scene.current?.frame()}>Fit</Button>
      </div>
      <canvas ref={canvas} className="fold-space" role="img" aria-label={`Part folded, in space. ${description}`} />
      <p className="small muted">Drag to turn, scroll or pinch for size. True to scale; bends are arcs.</p>
    </div>
  )
}
