import { Parser } from 'saxen'
import { Auditor, type Issue, quote } from '../audit'
import { LARGEST_COORDINATE_NM } from '../limits'

/** A closed line in nanometres: x, y of its corners, and the centre of the arc that leads to a corner where one does. */
export interface Ipc2581Loop {
  readonly pointsNm: readonly number[]
  readonly arcs: readonly {
    readonly corner: number
    readonly centreXNm: number
    readonly centreYNm: number
    readonly isClockwise: boolean
  }[]
  readonly isCutout: boolean
}
interface Layer {
  readonly name: string
  readonly layerFunction: string | null
  readonly side: string | null
  readonly line: number
}
interface StackLayer {
  readonly layer: string
  readonly thicknessNm: number | null
  readonly material: string | null
  readonly sequence: number | null
}
interface StackGroup {
  readonly name: string
  readonly thicknessNm: number | null
  readonly layers: StackLayer[]
}
/** An area of the outline: which stack it has, or how it bends. */
interface Area {
  readonly name: string
  /** As written: radius, side and angle of a bend, the stack of a zone. */
  readonly attributes: Readonly<Record<string, string>>
  readonly loops: Ipc2581Loop[]
  /** From x, from y, to x, to y. */
  readonly bendLinesNm: (readonly [number, number, number, number])[]
}

export interface Ipc2581Reading {
  readonly kind: 'ipc2581'
  readonly revision: string | null
  readonly unit: 'mm' | 'inch' | 'um' | null
  readonly layers: readonly Layer[]
  readonly stackGroups: readonly StackGroup[]
  readonly outline: readonly Ipc2581Loop[]
  readonly zones: readonly Area[]
  readonly bendAreas: readonly Area[]
  readonly issues: readonly Issue[]
}

const MOST_BYTES = 256 * 1024 * 1024
const DEEPEST = 200
const NM_OF: Readonly<Record<string, readonly [unit: 'mm' | 'inch' | 'um', nm: number]>> = {
  MILLIMETER: ['mm', 1e6],
  MM: ['mm', 1e6],
  INCH: ['inch', 25.4e6],
  MICRON: ['um', 1e3],
}

/**
 * Reads layers, stack groups, outline, zones and bend areas of IPC-2581 B and C (element names from memory). A document type declaration is refused: the standard
 * needs none, and entities that expand come in one.
 */
export function readIpc2581(bytes: Uint8Array): Ipc2581Reading {
  const reader = new Ipc2581Reader()
  if (bytes.length > MOST_BYTES) reader.auditor.error(1, 1, `the file has more than ${MOST_BYTES} bytes: not read`)
  else reader.parse(new TextDecoder().decode(bytes))
  return reader.finish()
}

type Attribute = (name: string) => string | null

class Ipc2581Reader {
  readonly auditor = new Auditor()
  #revision: string | null = null
  #hasRoot = false
  #unit: Ipc2581Reading['unit'] = null
  #unitNm = Number.NaN
  readonly #layers: Layer[] = []
  readonly #groups: StackGroup[] = []
  readonly #outline: Ipc2581Loop[] = []
  readonly #zones: Area[] = []
  readonly #bends: Area[] = []
  readonly #path: string[] = []
  #area: Area | null = null
  #isInProfile = false
  #loop: { pointsNm: number[]; arcs: Ipc2581Loop['arcs'][number][]; isCutout: boolean } | null = null
  #place: () => { line: number; column: number } = () => ({ line: 0, column: 0 })
  #isStopped = false

  parse(xml: string): void {
    const parser = new Parser()
    parser
      .on('openTag', (rawName, attributes, decode, _selfClosing, getContext) => {
        if (this.#isStopped) return
        this.#place = getContext
        const name = rawName.replace(/^[^:]*:/, '')
        this.#path.push(name)
        if (this.#path.length > DEEPEST)
          return this.#stop(`elements stand in elements more than ${DEEPEST} deep: the rest is not read`)
        this.#open(name, (wanted) => {
          const value = attributes()[wanted]
          return value === undefined ? null : decode(value)
        })
      })
      .on('closeTag', (rawName) => {
        if (this.#isStopped) return
        this.#close(rawName.replace(/^[^:]*:/, ''))
        this.#path.pop()
      })
      .on('attention', (part, _decode, getContext) => {
        this.#place = getContext
        if (/^<!DOCTYPE/i.test(part))
          this.#stop('it has a document type declaration, which is refused: nothing is read')
      })
      .on('error', (problem, getContext) => {
        this.#place = getContext
        this.#error(`not well-formed: ${problem.message}`)
      })
    parser.parse(xml)
  }

  finish(): Ipc2581Reading {
    if (!this.#hasRoot && !this.#isStopped) this.auditor.error(1, 1, 'there is no IPC-2581 element')
    return {
      kind: 'ipc2581',
      revision: this.#revision,
      unit: this.#unit,
      layers: this.#layers,
      stackGroups: this.#groups,
      outline: this.#outline,
      zones: this.#zones,
      bendAreas: this.#bends,
      issues: this.auditor.finish(),
    }
  }

  #error(reason: string): undefined {
    const { line, column } = this.#place()
    this.auditor.error(line + 1, column + 1, reason)
  }

  #stop(reason: string): undefined {
    this.#error(reason)
    this.#isStopped = true
  }

  #open(name: string, attribute: Attribute): undefined {
    switch (name) {
      case 'IPC-2581':
        this.#hasRoot = true
        this.#revision = attribute('revision')
        if (!/^[BC]/.test(this.#revision ?? ''))
          this.#error(`revision ${quote(this.#revision ?? 'none')}: read as B and C are`)
        return
      case 'CadHeader': {
        const unit = NM_OF[attribute('units') ?? '']
        if (unit === undefined)
          this.#error(`${quote(attribute('units') ?? 'none')} is not a unit: lengths cannot be read`)
        else [this.#unit, this.#unitNm] = unit
        return
      }
      case 'Layer':
        this.#addLayer(attribute)
        return
      case 'StackupGroup':
        this.#groups.push({
          name: attribute('name') ?? '',
          thicknessNm: this.#length(attribute('thickness')),
          layers: [],
        })
        return
      case 'StackupLayer':
        this.#addStackLayer(attribute)
        return
      case 'Profile':
        this.#isInProfile = true
        return
      case 'StackupZone':
      case 'BendArea':
        this.#openArea(name, attribute)
        return
      case 'CircularBend':
        if (this.#area !== null) Object.assign(this.#area.attributes, readAttributes(attribute))
        return
      case 'BendLine': {
        const numbers = ['startX', 'startY', 'endX', 'endY'].map((key) => this.#coordinate(attribute(key)))
        const [a, b, c, d] = numbers
        if (this.#area !== null && a != null && b != null && c != null && d != null)
          this.#area.bendLinesNm.push([a, b, c, d])
        return
      }
      case 'Polygon':
      case 'Cutout':
        if (this.#isInProfile || this.#area !== null)
          this.#loop = { pointsNm: [], arcs: [], isCutout: name === 'Cutout' }
        return
      case 'PolyBegin':
      case 'PolyStepSegment':
      case 'PolyStepCurve':
        this.#addCorner(name, attribute)
        return
      case 'Dielectric': {
        // How one reads a material that stands in an element of its own.
        const last = this.#groups.at(-1)?.layers
        const layer = last?.at(-1)
        const material = attribute('material')
        if (last !== undefined && layer !== undefined && material !== null && layer.material === null)
          last[last.length - 1] = { ...layer, material }
        return
      }
    }
  }

  #close(name: string): undefined {
    if (name === 'Profile') this.#isInProfile = false
    if ((name === 'Polygon' || name === 'Cutout') && this.#loop !== null) {
      const loop = this.#loop
      this.#loop = null
      if (loop.pointsNm.length < 6 && loop.arcs.length === 0)
        return this.#error('an outline with fewer than three corners: left out')
      const [count, x0, y0] = [loop.pointsNm.length, loop.pointsNm[0], loop.pointsNm[1]]
      if (loop.pointsNm[count - 2] !== x0 || loop.pointsNm[count - 1] !== y0)
        this.#error('an outline that does not end where it began: closed by a straight line')
      if (this.#area !== null) this.#area.loops.push(loop)
      else this.#outline.push(loop)
    }
    if ((name === 'StackupZone' || name === 'BendArea') && this.#area !== null) {
      const list = name === 'BendArea' ? this.#bends : this.#zones
      list.push(this.#area)
      this.#area = null
    }
  }

  #addLayer(attribute: Attribute): undefined {
    const name = attribute('name')
    if (name === null) return this.#error('a layer without a name: left out')
    if (this.#layers.some((layer) => layer.name === name)) this.#error(`layer ${quote(name)} stands twice`)
    if (this.#layers.length >= 5000) return
    this.#layers.push({
      name,
      layerFunction: attribute('layerFunction'),
      side: attribute('side'),
      line: this.#place().line + 1,
    })
  }

  #addStackLayer(attribute: Attribute): undefined {
    const layer = attribute('layerOrGroupRef')
    const group = this.#groups.at(-1)
    if (layer === null || group === undefined)
      return this.#error('a layer of a stack without a name or a group: left out')
    const sequence = Number(attribute('sequence') ?? Number.NaN)
    const known = this.#layers.some(({ name }) => name === layer) || this.#groups.some(({ name }) => name === layer)
    if (!known) this.#error(`the stack names ${quote(layer)}, which is not a layer of the file`)
    group.layers.push({
      layer,
      thicknessNm: this.#length(attribute('thickness')),
      material: attribute('materialType') ?? attribute('material'),
      sequence: Number.isFinite(sequence) ? sequence : null,
    })
  }

  #openArea(name: string, attribute: Attribute): undefined {
    if (this.#area !== null) return this.#error(`${name} inside another area: taken as part of it`)
    this.#area = { name: attribute('name') ?? '', attributes: readAttributes(attribute), loops: [], bendLinesNm: [] }
  }

  #addCorner(name: string, attribute: Attribute): undefined {
    const loop = this.#loop
    if (loop === null) return
    const [x, y] = [this.#coordinate(attribute('x')), this.#coordinate(attribute('y'))]
    if (x === null || y === null) return
    if (name === 'PolyStepCurve') {
      const [centreXNm, centreYNm] = [this.#coordinate(attribute('centerX')), this.#coordinate(attribute('centerY'))]
      if (centreXNm === null || centreYNm === null) return
      loop.arcs.push({
        corner: loop.pointsNm.length / 2,
        centreXNm,
        centreYNm,
        isClockwise: attribute('clockwise') === 'true',
      })
    }
    loop.pointsNm.push(x, y)
  }

  #length(text: string | null): number | null {
    if (text === null) return null
    const value = Number(text) * this.#unitNm
    if (!(value >= 0 && value <= LARGEST_COORDINATE_NM)) {
      this.#error(`${quote(text)} is not a length`)
      return null
    }
    return Math.round(value)
  }

  #coordinate(text: string | null): number | null {
    const value = text === null || text.trim() === '' ? Number.NaN : Number(text) * this.#unitNm
    if (!(Math.abs(value) <= LARGEST_COORDINATE_NM)) {
      this.#error(`${quote(text ?? 'none')} is not a coordinate`)
      return null
    }
    return Math.round(value)
  }
}

const AREA_ATTRIBUTES = [
  'stackupGroupRef',
  'stackupRef',
  'sequenceNumber',
  'innerSide',
  'innerRadius',
  'innerAngle',
  'comment',
]
function readAttributes(attribute: Attribute): Record<string, string> {
  return Object.fromEntries(
    AREA_ATTRIBUTES.flatMap((name) => {
      const value = attribute(name)
      return value === null ? [] : [[name, value]]
    }),
  )
}
