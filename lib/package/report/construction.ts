import type { Content } from 'pdfmake/interfaces'
import { formatDesignation, listLayerTable, nameConductorLayers, toSvg } from '@/lib/drawing'
import { findMaterial, getChoiceWord, MATERIAL_FIELDS, nameLayerKind, ZONE_FIELDS, type ZoneResult } from '@/lib/engine'
import { asComputed, asEntered, digitsAsComputed, digitsAsEntered } from '@/lib/engine/units'
import type { PackageContent } from '../content'
import type { Pictures } from './pictures'
import {
  keepTogether,
  level1,
  level2,
  makeEmptyPart,
  makeFacts,
  makeTable,
  PICTURE_SCALE,
  TEXT_WIDTH_PT,
} from './style'
import { formatSource } from './words'

const um = (value: number) => digitsAsComputed(value, 'thicknessUm')

export function makeConstruction(content: PackageContent, pictures: Pictures | null): Content[] {
  const { design, evaluation } = content.snapshot
  const zones = evaluation?.results.zones ?? []
  if (design.construction.layers.length === 0) {
    return [makeEmptyPart(level1('3  Construction'), 'The construction has no layers.')]
  }
  const parts: Content[] = [makeLayers(content)]
  if (pictures !== null && zones.length > 0) {
    parts.push({
      stack: [
        { text: 'Section through the part', style: 'subsection' },
        { svg: toSvg(pictures.drawPart(TEXT_WIDTH_PT * PICTURE_SCALE)), width: TEXT_WIDTH_PT },
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
  const findings = zone.encapsulation.flatMap((outcome) => (outcome.kind === 'decided' ? [outcome.summary] : []))
  if (findings.length > 0) facts.push(['Encapsulation of the copper', { stack: findings }])
  if (zone.defaultsUsed.length > 0) facts.push(['Defaults used', { stack: [...zone.defaultsUsed] }])
  const head: Content[] = [
    makeFacts(facts, level2(`Zone ${zone.name} (${getChoiceWord(ZONE_FIELDS.kind, zone.kind)})`)),
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
  const drawn: Content = { svg: toSvg(picture), width: TEXT_WIDTH_PT }
  return [keepTogether([...head, drawn], { pictureHeightPt: picture.heightPx / PICTURE_SCALE }), table]
}

/** Constants that the results rest on, each with its source. */
function makeMaterials({ snapshot }: PackageContent): Content {
  const { design } = snapshot
  const ids = new Set(
    design.construction.layers.flatMap((layer) => (layer.kind === 'unbonded-gap' ? [] : [layer.materialId])),
  )
  const rows = [...ids].flatMap((id) => {
    const material = findMaterial(design, id)
    if (material === null) return []
    const foil =
      material.foil === null
        ? ''
        : `${getChoiceWord(MATERIAL_FIELDS.foil.fields.type, material.foil.type)}, yield ${asEntered(material.foil.yieldStrengthMpa.value, 'mpa')}`
    return [
      [
        {
          stack: [
            material.name,
            ...(material.specification === '' ? [] : [{ text: material.specification, style: 'small' }]),
          ],
        },
        asEntered(material.modulusGpa.value),
        asEntered(material.poisson.value),
        material.maxServiceDegC === null ? '–' : asEntered(material.maxServiceDegC.value),
        {
          stack: [
            ...(foil === '' ? [] : [foil]),
            { text: formatSource(material.modulusGpa.sourceKey), style: 'small' },
          ],
        },
      ] satisfies Content[],
    ]
  })
  return makeTable(
    [
      { label: 'Material', width: '*' },
      { label: 'Modulus, GPa', width: 48, isNumeric: true },
      { label: "Poisson's ratio", width: 44, isNumeric: true },
      { label: 'Service to, °C', width: 44, isNumeric: true },
      { label: 'Foil; source of the modulus', width: 190 },
    ],
    rows,
    level2('Materials'),
  )
}
