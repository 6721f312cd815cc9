import {
  type ConductorLayer,
  type Design,
  LAYER_FIELDS,
  type Layer,
  listMaterialsFor,
  type Material,
  makeLayerOfKind,
  NO_PLATING,
  nameSchema,
  PLATED_COPPER_ID,
} from '@/lib/engine'
import type { LengthUnit } from '@/lib/engine/units'
import { type Read, readChoice, readMark, readShare, readThickness, readTolerance } from './cells'
import { type LayerColumn, nameZoneColumn, PLATING_NAMES } from './columns'
import type { InZone, LayerRow } from './rows'
import { readZoneCell } from './zone-cell'

/** What a table of the trade may call a kind, in small letters, where it can mean one kind alone. */
const KIND_SYNONYMS: Readonly<Record<string, Layer['kind']>> = {
  copper: 'conductor',
  'copper foil': 'conductor',
  foil: 'conductor',
  coverlay: 'coverlay-film',
  base: 'base-film',
  'bond ply': 'bondply',
  mask: 'solder-mask',
  soldermask: 'solder-mask',
  'solder resist': 'solder-mask',
  shield: 'shield-film',
  'air gap': 'unbonded-gap',
}

const ONLY_COPPER = [
  'role',
  'planePattern',
  'coverageFraction',
  'plating',
  'platingUm',
  'platingToleranceUm',
  'processingLossUm',
] as const satisfies readonly LayerColumn[]

type Cells = Readonly<Record<string, string>>
type Problem = { readonly field: string; readonly message: string }
type RowReading =
  | { readonly ok: true; readonly row: LayerRow }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Where a row's material may come from: the design and the library, and what is offered besides. */
interface MaterialChoice {
  readonly design: Design
  readonly offered: readonly Material[]
}

/** A row's cells as a layer. What is empty gets the usual value and is marked as assumed, as in a layer added by hand. */
export function readLayerRow(
  materials: MaterialChoice,
  fields: Cells,
  zoneCount: number,
  unit: LengthUnit,
): RowReading {
  const reader = new RowReader(fields, unit)
  const { text: name } = reader.cell('name')
  const named = nameSchema.safeParse(name)
  if (!named.success) reader.refuse('name', named.error.issues[0]?.message ?? 'is no name')
  const kind = reader.take('kind', readKind)
  if (kind === null) return { ok: false, problems: reader.problems }
  const base = makeLayerOfKind(materials.design, kind, { id: '', name, from: null })
  const layer = base.kind === 'unbonded-gap' ? reader.readGap(base) : reader.readSolid(materials, base)
  const inZones = Array.from({ length: zoneCount }, (_, at): InZone => {
    const reading = readZoneCell(fields[nameZoneColumn(at)] ?? '', kind === 'conductor')
    if (!reading.ok) reader.refuse(nameZoneColumn(at), reading.reason)
    return reading.ok ? reading.value : null
  })
  return reader.problems.length > 0
    ? { ok: false, problems: reader.problems }
    : { ok: true, row: { layer, assumed: [...reader.assumed], inZones } }
}

function readKind(text: string): Read<Layer['kind']> {
  const synonym = KIND_SYNONYMS[text.toLowerCase()]
  return synonym === undefined ? readChoice(text, LAYER_FIELDS.kind.choices) : { ok: true, value: synonym }
}

/** Goes through the cells of one row, and gathers what is wrong and what is assumed. */
class RowReader {
  readonly problems: Problem[] = []
  readonly assumed = new Set<string>()

  constructor(
    private readonly fields: Cells,
    private readonly unit: LengthUnit,
  ) {}

  cell(column: LayerColumn) {
    return readMark(this.fields[column] ?? '')
  }

  refuse(field: string, message: string) {
    this.problems.push({ field, message })
  }

  /** What a cell says; null where it is empty or wrong. */
  take<T>(column: LayerColumn, read: (text: string) => Read<T>): T | null {
    const { text } = this.cell(column)
    if (text === '') return null
    const reading = read(text)
    if (reading.ok) return reading.value
    this.refuse(column, reading.reason)
    return null
  }

  /** As `take`, with what stands in for an empty cell and the field whose mark it then bears. */
  takeOr<T>(column: LayerColumn, usual: T, mark: string, read: (text: string) => Read<T>): T {
    const { text, isAssumed } = this.cell(column)
    if (text === '' || isAssumed) this.assumed.add(mark)
    return this.take(column, read) ?? usual
  }

  private refuseFilled(columns: readonly LayerColumn[], why: string) {
    for (const column of columns) if (this.cell(column).text !== '') this.refuse(column, why)
  }

  readGap(base: Extract<Layer, { kind: 'unbonded-gap' }>): Layer {
    this.refuseFilled(['materialId', 'tolerancePlusUm', 'toleranceMinusUm'], 'must be empty: a gap is air')
    this.refuseFilled(ONLY_COPPER, 'must be empty: only copper has this')
    const thicknessUm = this.takeOr('thicknessUm', base.thicknessUm, 'thicknessUm', (text) =>
      readThickness(text, this.unit, false),
    )
    return { ...base, thicknessUm }
  }

  readSolid(materials: MaterialChoice, base: Exclude<Layer, { kind: 'unbonded-gap' }>): Layer {
    const isFoil = base.kind === 'conductor'
    const thicknessUm = this.takeOr('thicknessUm', base.thicknessUm, 'thicknessUm', (text) =>
      readThickness(text, this.unit, isFoil),
    )
    const readDeviation = (text: string) => readTolerance(text, this.unit, thicknessUm)
    const common = {
      thicknessUm,
      tolerancePlusUm: this.takeOr('tolerancePlusUm', 0, 'tolerancePlusUm', readDeviation),
      toleranceMinusUm: this.takeOr('toleranceMinusUm', 0, 'toleranceMinusUm', readDeviation),
      materialId: this.takeOr('materialId', base.materialId, 'materialId', (text) =>
        findMaterialId(materials, base.kind, text),
      ),
    }
    if (base.kind === 'conductor') return this.readCopper({ ...base, ...common })
    this.refuseFilled(ONLY_COPPER, 'must be empty: only copper has this')
    return { ...base, ...common }
  }

  private readCopper(base: ConductorLayer): ConductorLayer {
    const role = this.take('role', (text) => readChoice(text, LAYER_FIELDS.role.choices)) ?? base.role
    return {
      ...base,
      role,
      planePattern: this.take('planePattern', (text) => readChoice(text, LAYER_FIELDS.planePattern.choices)),
      coverageFraction: this.takeOr('coverageFraction', base.coverageFraction, 'coverageFraction', readShare),
      plating: this.readPlating(base.thicknessUm),
      processingLossUm: this.takeOr('processingLossUm', 0, 'processingLossUm', (text) =>
        readTolerance(text, this.unit, base.thicknessUm),
      ),
    }
  }

  private readPlating(foilUm: number): ConductorLayer['plating'] {
    const process = this.takeOr('plating', NO_PLATING.process, 'plating', (text) => readChoice(text, PLATING_NAMES))
    if (process === 'none') {
      const isStated = this.cell('plating').text !== ''
      for (const column of ['platingUm', 'platingToleranceUm'] as const) {
        const { text } = this.cell(column)
        if (text !== '' && Number(text) !== 0)
          this.refuse(column, isStated ? 'must be empty: nothing is plated' : 'say under Plating which process adds it')
      }
      return NO_PLATING
    }
    const thicknessUm = this.take('platingUm', (text) => readThickness(text, this.unit, false))
    if (thicknessUm === null && this.cell('platingUm').text === '')
      this.refuse('platingUm', 'is empty: say how much copper the plating adds')
    const added = thicknessUm ?? foilUm
    const toleranceUm = this.take('platingToleranceUm', (text) => readTolerance(text, this.unit, added))
    if (toleranceUm === null) this.assumed.add('plating')
    return { process, thicknessUm: added, toleranceUm: toleranceUm ?? 0, materialId: PLATED_COPPER_ID }
  }
}

/** At most so many materials are named in a refusal. */
const MOST_NAMED = 12

/** A material of the layer's kind by its id or its name; by its specification where one alone has it. */
function findMaterialId({ design, offered: besides }: MaterialChoice, kind: Layer['kind'], text: string): Read<string> {
  const offered = listMaterialsFor(design, kind, besides)
  const wanted = text.toLowerCase()
  const named =
    offered.find(({ id }) => id.toLowerCase() === wanted) ?? offered.find(({ name }) => name.toLowerCase() === wanted)
  if (named !== undefined) return { ok: true, value: named.id }
  const specified = offered.filter(({ specification }) => specification.toLowerCase() === wanted)
  const [only] = specified
  if (only !== undefined && specified.length === 1) return { ok: true, value: only.id }
  if (specified.length > 1)
    return { ok: false, reason: `"${text}" is the specification of ${specified.map(({ id }) => id).join(', ')}` }
  const ids = offered.slice(0, MOST_NAMED).map(({ id }) => id)
  return {
    ok: false,
    reason: `"${text}" is no material for a ${LAYER_FIELDS.kind.choices[kind].toLowerCase()}; such as ${ids.join(', ')}`,
  }
}
