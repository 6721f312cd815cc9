import { type Affine, carry, product, scaleBy, shiftBy, turnBy } from '../curves'
import { type Drawing, type DrawingLayer, Issues, StrokeList } from '../drawing'
import { curvesOf, type EntityCurves, Numbers, planeOf } from './entity-curves'
import { decodeName, shorten } from './groups'
import type { DxfFile } from './read-dxf'
import type { Entity } from './structure'

/** Blocks within blocks, and what one insert may repeat. */
const MAX_DEPTH = 16
const MAX_COPIES = 10_000
/** Entities that are visited in all: blocks within blocks multiply. */
const MAX_VISITS = 200_000

interface Frame {
  readonly by: Affine
  /** Layer of the insert, which what lies on layer 0 of a block takes. */
  readonly layer: string | null
  readonly depth: number
  readonly open: readonly string[]
}

/** A read file as lines and arcs in mm. Splines and ellipses come within `toleranceMm` of themselves. */
export function drawDxf(file: DxfFile, mmPerUnit: number, toleranceMm: number): Drawing {
  const issues = new Issues()
  const strokes = new StrokeList(issues, toleranceMm)
  const walk = new Walk(file, issues, strokes)
  walk.visit(file.structure.entities, { by: scaleBy(mmPerUnit, mmPerUnit), layer: null, depth: 0, open: [] })
  walk.tellPassedOver()
  const counts = new Map<string, number>()
  for (const { layer } of strokes.strokes) counts.set(layer, (counts.get(layer) ?? 0) + 1)
  const layers: DrawingLayer[] = [...counts].map(([name, count]) => ({
    name,
    strokes: count,
    isHidden: file.structure.hiddenLayers.has(name),
  }))
  return { layers, strokes: strokes.strokes, issues: [...file.issues, ...issues.all()] }
}

class Walk {
  private visits = 0
  private readonly known = new Map<Entity, EntityCurves | null>()
  /** Kinds that are not drawn, with how many and the first line. */
  private readonly passedOver = new Map<string, { count: number; line: number }>()

  constructor(
    private readonly file: DxfFile,
    private readonly issues: Issues,
    private readonly strokes: StrokeList,
  ) {}

  visit(entities: readonly Entity[], frame: Frame): void {
    for (let at = 0; at < entities.length; at += 1) {
      const entity = entities[at]
      if (entity === undefined || this.strokes.isFull) return
      this.visits += 1
      if (this.visits === MAX_VISITS)
        this.issues.add(entity.line, 'blocks within blocks draw too much: the rest is left out')
      if (this.visits >= MAX_VISITS) return
      const vertices: Entity[] = []
      if (entity.type === 'POLYLINE') {
        while (entities[at + 1]?.type === 'VERTEX') {
          at += 1
          const vertex = entities[at]
          if (vertex !== undefined) vertices.push(vertex)
        }
        if (entities[at + 1]?.type === 'SEQEND') at += 1
      }
      this.draw(entity, vertices, frame)
    }
  }

  private draw(entity: Entity, vertices: readonly Entity[], frame: Frame): void {
    const numbers = new Numbers(entity)
    if (numbers.get(67, 0) === 1) this.passOver('of another layout (paper space)', entity)
    else if (numbers.get(60, 0) === 1) this.passOver('made invisible', entity)
    else this.drawVisible(entity, vertices, frame)
  }

  private drawVisible(entity: Entity, vertices: readonly Entity[], frame: Frame): void {
    const own = decodeName(entity.groups.find(({ code }) => code === 8)?.value ?? '0')
    const layer = own === '0' && frame.layer !== null ? frame.layer : own
    if (entity.type === 'INSERT') {
      const reason = this.insert(entity, layer, frame)
      if (reason !== null) this.issues.add(entity.line, `INSERT ${reason}: left out`)
    } else if (entity.type === 'POINT') {
      const numbers = new Numbers(entity)
      const point = carry(frame.by, [numbers.get(10), numbers.get(20)])
      if (numbers.fault === null) this.strokes.addPoint(layer, entity.line, point)
      else this.issues.add(entity.line, `POINT ${numbers.fault}`)
    } else {
      this.drawCurves(entity, vertices, { ...frame, layer })
    }
  }

  private drawCurves(entity: Entity, vertices: readonly Entity[], { by, layer }: Frame): void {
    // A block that is placed often is worked out once.
    const known = this.known.get(entity)
    const result = known === undefined ? curvesOf(entity, vertices) : known
    this.known.set(entity, result)
    if (result === null) {
      this.passOver(entity.type, entity)
      return
    }
    if (!result.ok) {
      this.issues.add(entity.line, `${entity.type} ${result.reason}`)
      return
    }
    if (result.remark !== null) this.issues.add(entity.line, `${entity.type} ${result.remark}`)
    this.strokes.add(layer ?? '0', entity.line, result.curves, product(by, result.by))
  }

  /** The reason where it cannot be drawn. */
  private insert(entity: Entity, layer: string, frame: Frame): string | null {
    const written = entity.groups.find(({ code }) => code === 2)?.value
    if (written === undefined) return 'names no block'
    const name = decodeName(written).toUpperCase()
    const block = this.file.structure.blocks.get(name)
    if (block === undefined) return `names block "${shorten(written)}", which is not in the file`
    if (frame.open.includes(name)) return `draws block "${shorten(written)}" within itself`
    if (frame.depth >= MAX_DEPTH) return `lies more than ${MAX_DEPTH} blocks deep`
    const numbers = new Numbers(entity)
    const plane = planeOf(numbers)
    const [columns, rows] = [Math.max(1, numbers.get(70, 1)), Math.max(1, numbers.get(71, 1))]
    const [stepX, stepY] = [numbers.get(44, 0), numbers.get(45, 0)]
    const place = shiftBy([numbers.get(10), numbers.get(20)])
    const turn = turnBy(numbers.get(50, 0))
    const [scaleX, scaleY] = [numbers.get(41, 1), numbers.get(42, 1)]
    if (numbers.fault !== null) return numbers.fault
    if (plane === null) return 'lies in a plane that is tilted against the drawing'
    if (scaleX === 0 || scaleY === 0) return 'has a scale of 0'
    if (!Number.isInteger(columns) || !Number.isInteger(rows) || columns * rows > MAX_COPIES) {
      return `repeats its block ${columns} by ${rows} times; at most ${MAX_COPIES} in all are drawn`
    }
    for (let row = 0; row < rows; row += 1) {
      for (let column = 0; column < columns; column += 1) {
        const step = shiftBy([column * stepX, row * stepY])
        const base = shiftBy([-block.base[0], -block.base[1]])
        const by = product(frame.by, plane, place, turn, step, scaleBy(scaleX, scaleY), base)
        this.visit(block.entities, { by, layer, depth: frame.depth + 1, open: [...frame.open, name] })
        if (this.strokes.isFull || this.visits >= MAX_VISITS) return null
      }
    }
    return null
  }

  private passOver(kind: string, { line }: Entity): void {
    const found = this.passedOver.get(kind)
    this.passedOver.set(kind, { count: (found?.count ?? 0) + 1, line: found?.line ?? line })
  }

  tellPassedOver(): void {
    for (const [kind, { count, line }] of this.passedOver) {
      this.issues.add(line, `${count} × ${shorten(kind)}: not drawn in a plan, passed over`)
    }
  }
}
