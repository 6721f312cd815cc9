import type { Content } from 'pdfmake/interfaces'
import { formatDesignation, listLayerTable, nameConductorLayers } from '@/lib/drawing'
import {
  callByName,
  citeRecordedSource,
  type Design,
  type FieldNode,
  findMaterial,
  getChoiceWord,
  getFieldInText,
  LAYER_FIELDS,
  MATERIAL_FIELDS,
  type Material,
  nameLayerKind,
  type SourcedNumber,
  ZONE_FIELDS,
  type Zone,
  type ZoneResult,
} from '@/lib/engine'
import { listLayerMaterialIds } from '@/lib/engine/design'
import { asComputed, asEntered, digitsAsComputed, digitsAsEntered } from '@/lib/engine/units'
import type { PackageContent } from '../content'
import type { Pictures } from './pictures'
import { describeRecord, listFieldTexts } from './records'
import {
  keepTogether,
  level1,
  level2,
  makeEmptyPart,
  makeFacts,
  makeTable,
  PICTURE_SCALE,
  showPicture,
  TEXT_WIDTH_PT,
} from './style'

/** The folded part is a look, not a thing to measure from: it takes less of the page. */
const FOLD_SHARE = 0.7

const um = (value: number) => digitsAsComputed(value, 'thicknessUm')

export function makeConstruction(content: PackageContent, pictures: Pictures | null): Content[] {
  const { design, evaluation } = content.snapshot
  const zones = evaluation?.results.zones ?? []
  if (design.construction.layers.length === 0) {
    return [makeEmptyPart(level1('3  Construction'), 'The construction has no layers.')]
  }
  const parts: Content[] = [makeLayers(content), ...makeLayerDetails(content)]
  if (pictures !== null && zones.length > 0) {
    parts.push({
      stack: [
        { text: 'Section through the part', style: 'subsection' },
        showPicture(pictures.drawPart(TEXT_WIDTH_PT * PICTURE_SCALE), TEXT_WIDTH_PT),
      ],
      unbreakable: true,
    })
  }
  const plan = pictures?.drawPlan(TEXT_WIDTH_PT * PICTURE_SCALE) ?? null
  if (plan !== null) {
    parts.push({
      stack: [
        { text: 'Part in plan', style: 'subsection' },
        showPicture(plan, TEXT_WIDTH_PT),
        { text: plan.description, style: 'small' },
      ],
      unbreakable: true,
    })
  }
  const fold = pictures?.drawFold(TEXT_WIDTH_PT * PICTURE_SCALE * FOLD_SHARE) ?? null
  if (fold !== null) {
    parts.push({
      stack: [
        { text: 'Part folded', style: 'subsection' },
        showPicture(fold, TEXT_WIDTH_PT * FOLD_SHARE),
        { text: fold.description, style: 'small' },
      ],
      unbreakable: true,
    })
  }
  for (const zone of zones) parts.push(...makeZone(content, zone, pictures))
  parts.push(makeMaterials(content))
  return parts
}

function makeLayers({ snapshot }: PackageContent): Content {
  const { rows } = listLayerTable(snapshot.design, [], 'um')
  return makeTable(
    [
      { label: 'No.', width: 14, isNumeric: true },
      { label: 'Layer', width: 32 },
      { label: 'Name', width: 96 },
      { label: 'Kind', width: 66 },
      { label: 'Material', width: '*' },
      { label: 'Thickness', width: 38, isNumeric: true },
      { label: 'Tolerance', width: 38, isNumeric: true },
      { label: 'Plating', width: 52 },
    ],
    rows.map((row) => [
      row.position ?? '',
      row.designation ?? '',
      row.name ?? '',
      row.kind ?? '',
      {
        stack: [
          row.material ?? '',
          ...((row.specification ?? '') === '' ? [] : [{ text: row.specification ?? '', style: 'small' }]),
        ],
      },
      row.thickness ?? '',
      row.tolerance ?? '',
      row.plating ?? '',
    ]),
    level1('3  Construction: layers from the top face down; as bought, in µm'),
  )
}

const IN_LAYER_TABLE = ['name', 'kind', 'materialId', 'thicknessUm', 'tolerancePlusUm', 'toleranceMinusUm']

/** What the table of layers has no column for, of each layer that has more. */
function makeLayerDetails({ snapshot: { design } }: PackageContent): Content[] {
  const facts = design.construction.layers.flatMap((layer): [string, Content][] => {
    const text = describeRecord(design, layer, LAYER_FIELDS, IN_LAYER_TABLE)
    return text === '' ? [] : [[layer.name, text]]
  })
  return facts.length === 0 ? [] : [makeFacts(facts, level2('Layers, further details'))]
}

const IN_ZONE_FACTS = ['name', 'kind', 'presence', 'connectorWindow', 'statedThicknessUm']

/** Copper, plating and hatch of the zone where they are not those of the layer. */
function listCopper(design: Design, zone: Zone): string[] {
  return zone.presence.flatMap(({ layerId, ...presence }) => {
    const stated = Object.fromEntries(Object.entries(presence).filter(([, value]) => value !== null))
    const name = design.construction.layers.find(({ id }) => id === layerId)?.name ?? layerId
    const text = describeRecord(design, stated, ZONE_FIELDS.presence.entry)
    return text === '' ? [] : [`${name}: ${text}`]
  })
}

function makeZone({ snapshot }: PackageContent, zone: ZoneResult, pictures: Pictures | null): Content[] {
  const { design } = snapshot
  const planned = design.construction.zones.find(({ id }) => id === zone.zoneId)
  const designations = nameConductorLayers(design.construction)
  const facts: [string, Content][] = [
    ['Finished thickness', `${um(zone.thicknessUm)} µm`],
    ['Worst case', `${um(zone.worstCaseUm.low)} to ${um(zone.worstCaseUm.high)} µm`],
    ['Root sum square', `${um(zone.rootSumSquareUm.low)} to ${um(zone.rootSumSquareUm.high)} µm`],
  ]
  if (zone.contact !== null) {
    const { thicknessUm, worstCaseUm, platingUm, finishUm, missing } = zone.contact
    facts.push([
      'Over the contacts',
      missing.length > 0
        ? `not computed: ${missing.map(({ label }) => label).join('; ')}`
        : `${um(thicknessUm)} µm (${um(worstCaseUm.low)} to ${um(worstCaseUm.high)} µm), with plating ${um(platingUm)} and finish ${um(finishUm)} µm`,
    ])
  }
  if (planned?.connectorWindow) {
    facts.push([
      ZONE_FIELDS.connectorWindow.label,
      `${digitsAsEntered(planned.connectorWindow.minUm)} to ${asEntered(planned.connectorWindow.maxUm, 'um')}`,
    ])
  }
  if (planned?.statedThicknessUm)
    facts.push([ZONE_FIELDS.statedThicknessUm.label, asEntered(planned.statedThicknessUm, 'um')])
  if (planned !== undefined) {
    for (const { words, text } of listFieldTexts(design, planned, ZONE_FIELDS, IN_ZONE_FACTS))
      facts.push([words.label, text])
    const copper = listCopper(design, planned)
    if (copper.length > 0) facts.push(['Copper in this zone', { stack: copper }])
  }
  const findings = zone.encapsulation.flatMap((outcome) => (outcome.kind === 'decided' ? [outcome.summary] : []))
  if (findings.length > 0) facts.push(['Encapsulation of the copper', { stack: findings }])
  if (zone.defaultsUsed.length > 0) facts.push(['Defaults used', { stack: [...zone.defaultsUsed] }])
  const head: Content[] = [
    makeFacts(facts, level2(`${callByName('Zone', zone.name)} (${getChoiceWord(ZONE_FIELDS.kind, zone.kind)})`)),
  ]
  const picture =
    pictures === null || zone.layers.length === 0 ? null : pictures.drawZone(zone, TEXT_WIDTH_PT * PICTURE_SCALE)
  const table = makeTable(
    [
      { label: 'Layer', width: 50 },
      { label: 'Name', width: '*' },
      { label: 'Kind', width: 78 },
      { label: 'Finished, µm', width: 56, isNumeric: true },
      { label: 'Range, µm', width: 76, isNumeric: true },
      { label: 'Coverage', width: 46, isNumeric: true },
      { label: 'Share of variance', width: 52, isNumeric: true },
    ],
    zone.layers.map((layer) => {
      const designation = designations.get(layer.layerId)
      return [
        designation === undefined ? '' : formatDesignation(designation),
        layer.name,
        nameLayerKind(layer.kind),
        um(layer.nominalUm),
        `${um(layer.minUm)} to ${um(layer.maxUm)}`,
        layer.coverageFraction === null ? '' : asComputed(layer.coverageFraction * 100, 'roughSharePct'),
        asComputed(layer.varianceShareFraction * 100, 'roughSharePct'),
      ]
    }),
  )
  if (picture === null) return [...head, table]
  const drawn = showPicture(picture, TEXT_WIDTH_PT)
  return [keepTogether([...head, drawn], { pictureHeightPt: picture.heightPx / PICTURE_SCALE }), table]
}

/** Constants that the results rest on, with their spreads and sources. */
function makeMaterials({ snapshot }: PackageContent): Content {
  const { design } = snapshot
  const ids = listLayerMaterialIds(design.construction.layers)
  const rows = [...ids].flatMap((id) => {
    const material = findMaterial(design, id)
    if (material === null) return []
    const constants = listConstants(material)
    const sources = [...new Set(constants.map(({ sourceKey }) => citeRecordedSource(sourceKey)))]
    const isOwn = design.materials.some((own) => own.id === id)
    return [
      [
        {
          stack: [
            material.name,
            { text: getChoiceWord(MATERIAL_FIELDS.kind, material.kind), style: 'small' },
            ...(material.specification === '' ? [] : [{ text: material.specification, style: 'small' }]),
          ],
        },
        constants.map(({ text }) => text).join('; '),
        {
          stack: [...sources, ...(isOwn && material.note !== '' ? [material.note] : [])].map((text) => ({
            text,
            style: 'small',
          })),
        },
      ] satisfies Content[],
    ]
  })
  return makeTable(
    [
      { label: 'Material', width: 110 },
      { label: 'Constants, with their spread where one is stated', width: '*' },
      { label: 'Sources', width: 170 },
    ],
    rows,
    level2('Materials'),
  )
}

/** Every constant of the record in the order of the dictionary: `Modulus 3 GPa (2.5 to 5.5)`. */
function listConstants({ foil, ...material }: Material): { text: string; sourceKey: string }[] {
  const ofFoil = foil === null ? [] : describe(foil, MATERIAL_FIELDS.foil.fields)
  const type =
    foil === null
      ? []
      : [
          {
            text: `foil ${getChoiceWord(MATERIAL_FIELDS.foil.fields.type, foil.type)}`,
            sourceKey: foil.yieldStrengthMpa.sourceKey,
          },
        ]
  return [...describe(material, MATERIAL_FIELDS), ...type, ...ofFoil]
}

function describe(record: object, fields: Readonly<Record<string, FieldNode>>) {
  return Object.entries(record).flatMap(([key, value]: [string, unknown]) => {
    const words = fields[key]
    if (words === undefined || !isSourced(value)) return []
    const { spread } = value
    const isOneFigure = spread === null || (spread.low === value.value && spread.high === value.value)
    const range = isOneFigure ? '' : ` (${digitsAsEntered(spread.low)} to ${digitsAsEntered(spread.high)})`
    return [
      { text: `${getFieldInText(words)} ${asEntered(value.value, words.unit)}${range}`, sourceKey: value.sourceKey },
    ]
  })
}

const isSourced = (value: unknown): value is SourcedNumber =>
  typeof value === 'object' && value !== null && 'sourceKey' in value
