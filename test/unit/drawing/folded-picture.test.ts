import { describe, expect, it } from 'vitest'
import { drawFolded, FOLDED_VIEWS, listFoldedLegend, PRINT_PALETTE, toSvg } from '@/lib/drawing'
import { orderByDepth, type SeenPoint } from '@/lib/drawing/folded/depth-order'
import { makeSeen } from '@/lib/drawing/folded/folded-view'
import { evaluate } from '@/lib/engine'
import { listFoldSteps, measureRoom, prepareFolding, shapeFold } from '@/lib/engine/folding'
import { createRandomStream } from '@/lib/engine/numerics'
import { digitsOfResultLength } from '@/lib/engine/units'
import { listFoldedBodies } from '@/lib/fold'
import { DEMO_DESIGNS, readDrawnDesign } from '../engine-assembly/demo-design-files'
import { makeRandomPart } from '../fold/random-parts'

/** How far from the eye a face lies under a point of the picture; null where it does not lie there. */
function depthUnder(corners: readonly SeenPoint[], x: number, y: number): number | null {
  let [a, b, c] = [0, 0, 0]
  let isInside = false
  corners.forEach(([px, py, pz], at) => {
    const [qx, qy, qz] = corners[(at + 1) % corners.length] ?? [px, py, pz]
    a += (py - qy) * (pz + qz)
    b += (pz - qz) * (px + qx)
    c += (px - qx) * (py + qy)
    if (py > y !== qy > y && x < ((qx - px) * (y - py)) / (qy - py) + px) isInside = !isInside
  })
  const [ox, oy, oz] = corners[0] ?? [0, 0, 0]
  return isInside && Math.abs(c) > 1e-9 ? oz - (a * (x - ox) + b * (y - oy)) / c : null
}

const facingOf = (points: readonly SeenPoint[]) =>
  points.reduce((sum, [x, y], at) => {
    const [u, v] = points[(at + 1) % points.length] ?? [x, y]
    return sum + x * v - u * y
  }, 0)

describe('what is in front hides what is behind', () => {
  it('in 30 random parts, folded anyhow and seen from anywhere, the face painted last under a point is the nearest there', () => {
    const stream = createRandomStream(41)
    const random = () => stream.nextUniform()
    let [looks, wrong] = [0, 0]
    for (let run = 0; run < 30; run += 1) {
      const { part, carried } = makeRandomPart(random)
      // Small angles: bodies that pass through each other have no order.
      const shares = new Map(part.bands.map(({ id }) => [id, 0.35 * random()]))
      const seen = makeSeen({ turnDeg: 360 * random(), raiseDeg: 180 * random() - 90 })
      const faces = listFoldedBodies(part, carried, 'p0', shares, 15).flatMap((body) =>
        body.faces.map(({ corners }) => corners.map(seen)).filter((points) => facingOf(points) < -1e-6),
      )
      const order = orderByDepth(faces)
      expect([...order].sort((p, q) => p - q)).toEqual(faces.map((_, at) => at))
      const rank = new Map(order.map((face, at) => [face, at]))
      for (let look = 0; look < 60; look += 1) {
        const target = faces[Math.floor(random() * faces.length)] ?? []
        const [x, y] = ([0, 1] as const).map(
          (axis) => target.reduce((sum, corner) => sum + corner[axis], 0) / target.length + 0.01 * random(),
        ) as [number, number]
        const under = faces.flatMap((points, face) => {
          const depth = depthUnder(points, x, y)
          return depth === null ? [] : [{ depth, at: rank.get(face) ?? 0 }]
        })
        if (under.length < 2) continue
        looks += 1
        const nearest = Math.min(...under.map(({ depth }) => depth))
        const last = under.reduce((found, each) => (each.at > found.at ? each : found))
        // Faces that touch lie as deep as each other, to within the sag of a strip.
        if (last.depth > nearest + 0.06) wrong += 1
      }
    }
    expect(looks).toBeGreaterThan(100)
    expect(wrong).toBe(0)
  })
})

describe.each(DEMO_DESIGNS)('%s folded', (name) => {
  const design = readDrawnDesign(name)
  const { zones, bends } = evaluate(design)
  const folding = prepareFolding(design, zones, bends)
  if (folding.kind !== 'foldable') throw new Error(`${name} cannot be folded`)
  const steps = listFoldSteps(design, folding.value)
  const room = measureRoom(design, folding.value)
  const draw = (made: number, stripDeg?: number, stated = room) =>
    drawFolded(
      { bodies: shapeFold(design, folding.value, made, stripDeg), steps, made, room: stated },
      { palette: PRINT_PALETTE, widthPx: 600, view: FOLDED_VIEWS.oblique },
    )

  it('has a picture with numbers at each step, all of it inside its frame', () => {
    for (const made of [0, 0.5, steps.length]) {
      const picture = draw(made)
      if (picture === null) throw new Error('no picture')
      const numbers = [...toSvg(picture).matchAll(/points="([^"]*)"/gu)].flatMap(([, points = '']) =>
        points.split(' ').map(Number),
      )
      expect(numbers.length).toBeGreaterThan(100)
      expect(numbers.every((px) => px >= 0 && px <= Math.max(picture.widthPx, picture.heightPx))).toBe(true)
      expect(picture.table.rows).toHaveLength(steps.length)
      expect(toSvg(picture)).not.toMatch(/NaN|undefined|Infinity/u)
    }
  })

  it('says how far it is folded, in the words of the table', () => {
    expect(draw(0)?.description).toMatch(/^Flat\. /u)
    expect(draw(steps.length)?.description).toMatch(/^Folded\. /u)
    expect(draw(0.5)?.table.rows[0]?.state).toBe('on the way')
    expect(draw(steps.length)?.table.rows.every(({ state }) => state === 'bent')).toBe(true)
  })

  it('names the box that the checklist compares with the room, however coarsely its arcs are drawn', () => {
    const [x, y, height] = room.map(({ takenMm }) => digitsOfResultLength(takenMm, 'mm', 'mm'))
    const stated = room.map((side) => ({ ...side, roomMm: side.field === 'heightMm' ? 61.25 : null }))
    for (const stripDeg of [2, 30]) {
      const { description = '' } = draw(steps.length, stripDeg, stated) ?? {}
      expect(description).toContain(`It fills a box of ${x} × ${y} × ${height} mm. Its room: 61.25 mm in height.`)
    }
    expect(draw(0.5)?.description).toContain('a box of about')
  })

  it('names each colour that it draws once', () => {
    const bodies = shapeFold(design, folding.value, 1)
    const words = listFoldedLegend(bodies).map((entry) => entry.words)
    expect(new Set(words).size).toBe(words.length)
    expect(words).toContain('flex area and bend')
  })
})
