import { Parser } from 'saxen'
import { type Affine, product, scaleBy } from '../curves'
import { type Drawing, type DrawingLayer, type FileIssue, Issues, StrokeList } from '../drawing'
import { curvesOfShape } from './shapes'
import { readTransform } from './transform'

const MAX_SVG_BYTES = 16 * 1024 * 1024
const MAX_DEPTH = 200
const MAX_SHAPES = 100_000

interface SvgShape {
  readonly name: string
  readonly attributes: Readonly<Record<string, string>>
  readonly by: Affine
  readonly layer: string
  /** Which of the shapes it is, from 1: the parser tells places in the text too slowly to ask for each. */
  readonly number: number
}

/** An SVG that was read, before it is known how large its unit is. */
export interface SvgFile {
  readonly shapes: readonly SvgShape[]
  /** Size of a user unit where width or height say it, and the view box tells what they hold. */
  readonly mmPerUnit: number | null
  readonly says: string
  readonly issues: readonly FileIssue[]
}

export type ReadSvg = { readonly ok: true; readonly file: SvgFile } | { readonly ok: false; readonly reason: string }

const SHAPES: ReadonlySet<string> = new Set(['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon'])
/** What stands in these is drawn elsewhere, or not at all. */
const HIDING: ReadonlySet<string> = new Set(['defs', 'symbol', 'clipPath', 'mask', 'pattern', 'marker'])
const SILENT: ReadonlySet<string> = new Set(['svg', 'g', 'a', 'title', 'desc', 'metadata', 'style'])

/** Reads the shapes of an SVG; what is in it beside shapes is counted and told. */
export function readSvg(bytes: Uint8Array): ReadSvg {
  if (bytes.length > MAX_SVG_BYTES) {
    return { ok: false, reason: `the file has ${bytes.length} bytes; at most ${MAX_SVG_BYTES} are read` }
  }
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return { ok: false, reason: 'the file is not text in UTF-8' }
  }
  if (declaresEntities(text)) return { ok: false, reason: 'the file declares entities of its own, which are not read' }
  if (!/<svg[\s/>]/.test(text)) return { ok: false, reason: 'the file has no svg element: this is not an SVG file' }
  return walk(text)
}

/** A document type may be named; what it declares inside would change what the rest says. */
function declaresEntities(text: string): boolean {
  const start = text.search(/<!DOCTYPE/i)
  return start >= 0 && text.slice(start, text.indexOf('>', start) + 1).includes('[')
}

interface Open {
  readonly name: string
  readonly by: Affine
  readonly layer: string
  readonly isHidden: boolean
}

function walk(text: string): ReadSvg {
  const issues = new Issues()
  const shapes: SvgShape[] = []
  const passedOver = new Map<string, number>()
  const stack: Open[] = []
  let root: Readonly<Record<string, string>> | null = null
  let problem: string | null = null
  const parser = new Parser()
  parser.on('openTag', (written, attributes, decode) => {
    const name = written.replace(/^svg:/, '')
    const own = Object.fromEntries(Object.entries(attributes()).map(([key, value]) => [key, decode(String(value))]))
    const parent = stack.at(-1) ?? { name: '', by: scaleBy(1, 1), layer: '', isHidden: false }
    const by = readTransform(own.transform ?? null)
    if (by === null) issues.add(null, `"transform" of a ${name} after shape ${shapes.length} cannot be read: left out`)
    const isInner = name === 'svg' && root !== null
    if (root === null && name === 'svg') root = own
    if (isInner) issues.add(null, 'an svg within the svg has a scale of its own: left out')
    const isStyled = /transform\s*:/.test(own.style ?? '')
    if (isStyled) issues.add(null, `a ${name} is transformed by its style, which is not followed: left out`)
    const isHidden =
      parent.isHidden ||
      by === null ||
      HIDING.has(name) ||
      own.display === 'none' ||
      own.visibility === 'hidden' ||
      isInner ||
      isStyled ||
      /display\s*:\s*none/.test(own.style ?? '')
    const named = own['inkscape:label'] ?? own.id
    const layer = name === 'g' && named !== undefined && named !== '' ? named : parent.layer
    if (stack.length >= MAX_DEPTH) problem ??= `groups lie more than ${MAX_DEPTH} deep`
    else stack.push({ name, by: by === null ? parent.by : product(parent.by, by), layer, isHidden })
    if (isHidden) return
    if (SHAPES.has(name)) {
      if (shapes.length >= MAX_SHAPES) problem ??= `the file has more than ${MAX_SHAPES} shapes`
      else
        shapes.push({
          name,
          attributes: own,
          by: stack.at(-1)?.by ?? parent.by,
          layer: layer || 'no group',
          number: shapes.length + 1,
        })
    } else if (!SILENT.has(name) && !name.includes(':')) {
      passedOver.set(name, (passedOver.get(name) ?? 0) + 1)
    }
  })
  parser.on('closeTag', () => {
    stack.pop()
  })
  parser.on('error', (error) => {
    problem ??= `the file is not well-formed: ${error.message.split('\n')[0]?.slice(0, 120) ?? ''}`
  })
  try {
    parser.parse(text)
  } catch (error) {
    problem ??=
      error instanceof Error ? `the file is not well-formed: ${error.message.slice(0, 120)}` : 'cannot be read'
  }
  if (problem !== null) return { ok: false, reason: problem }
  if (shapes.length === 0) return { ok: false, reason: 'the file draws nothing that a plan can take over' }
  for (const [name, count] of passedOver)
    issues.add(null, `${count} × ${name.slice(0, 40)}: not drawn in a plan, passed over`)
  return { ok: true, file: { shapes, ...readSize(root ?? {}), issues: issues.all() } }
}

const UNIT_MM: Readonly<Record<string, number>> = { mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72, pc: 25.4 / 6 }

/** Pixels have a size by agreement only (CSS: 96 to an inch): who drew in them is asked. */
function readSize(root: Readonly<Record<string, string>>): Pick<SvgFile, 'mmPerUnit' | 'says'> {
  const box = (root.viewBox ?? '')
    .split(/[\s,]+/)
    .filter((part) => part !== '')
    .map(Number)
  const [width, height] = [scaleOf(root.width, box[2]), scaleOf(root.height, box[3])]
  if (width === null) {
    return {
      mmPerUnit: null,
      says: 'The file does not say how large its unit is (width in mm or inches, and viewBox).',
    }
  }
  if (height !== null && Math.abs(height / width - 1) > SAME_SCALE) {
    return { mmPerUnit: null, says: 'The file contradicts itself: its width and its height make its unit differ.' }
  }
  return { mmPerUnit: width, says: `The file is ${root.width} wide.` }
}

/** Sides that are written with few digits differ by as much. */
const SAME_SCALE = 1e-3

function scaleOf(text: string | undefined, units: number | undefined): number | null {
  const match = /^\s*([\d.]+(?:e[+-]?\d+)?)\s*(mm|cm|in|pt|pc)\s*$/.exec(text ?? '')
  const side = Number(match?.[1])
  const mm = UNIT_MM[match?.[2] ?? '']
  return mm === undefined || units === undefined || !(units > 0) || !(side > 0) ? null : (side * mm) / units
}

/** A read file as lines and arcs in mm, turned so that y points up. */
export function drawSvg(file: SvgFile, mmPerUnit: number, toleranceMm: number): Drawing {
  const issues = new Issues()
  const strokes = new StrokeList(issues, toleranceMm)
  for (const { name, attributes, by, layer, number } of file.shapes) {
    const shape = curvesOfShape(name, attributes)
    if (!shape.ok) {
      issues.add(null, `shape ${number}, a ${name}, ${shape.reason}: left out`)
      continue
    }
    for (const curves of shape.paths) strokes.add(layer, null, curves, product(scaleBy(mmPerUnit, -mmPerUnit), by))
    if (strokes.isFull) break
  }
  const counts = new Map<string, number>()
  for (const { layer } of strokes.strokes) counts.set(layer, (counts.get(layer) ?? 0) + 1)
  const layers: DrawingLayer[] = [...counts].map(([name, count]) => ({ name, strokes: count, isHidden: false }))
  return { layers, strokes: strokes.strokes, issues: [...file.issues, ...issues.all()] }
}
