import { type Design, FEATURE_FIELDS, getChoiceWord, NOT_STATED } from '@/lib/engine'
import { tidy } from '@/lib/engine/numerics'
import { digitsAsEntered } from '@/lib/engine/units'
import { formatDesignation, nameConductorLayers } from '../../layer-designations'
import { nameBends } from './bends'
import type { SheetColumn, SheetTable } from './model'
import { formatObserved, type SheetWords } from './words'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

interface NearBend {
  readonly nearestBend: { readonly bendId: string; readonly distanceMm: number | null } | null
}

function makeNearness(design: Design, words: SheetWords): (feature: NearBend) => string {
  const bends = nameBends(design)
  return ({ nearestBend }) =>
    nearestBend === null
      ? NOT_STATED
      : `${words.plan(nearestBend.distanceMm)} (${bends.get(nearestBend.bendId) ?? nearestBend.bendId})`
}

/** Tables of what was typed in or measured, each only where there is something. */
export function makeFeatureTables(design: Design, words: SheetWords): SheetTable[] {
  return [
    makeHoleTable(design, words),
    makeOpeningTable(design, words),
    makeNeedTable(design, words),
    makeOutlineTable(design, words),
  ].filter((table) => table.rows.length > 0)
}

function makeHoleTable(design: Design, words: SheetWords): SheetTable {
  const describeNearness = makeNearness(design, words)
  const mm = words.planUnit
  return {
    kind: 'table',
    id: 'holes',
    title: 'Holes and lands',
    keyColumnCount: 1,
    columns: [
      column('Ref.', 11),
      column('Name', 28, 1),
      column('Plated', 14),
      column(`Drill, ${mm}`, 15, 0, true),
      column(`Land, ${mm}`, 16, 0, true),
      column(`Ring by design, ${mm}`, 20, 0, true),
      column(`To the nearest bend, ${mm}`, 24, 0, true),
      column(`To the transition, ${mm}`, 22, 0, true),
    ],
    rows: design.features.holes.map((hole, index) => ({
      id: hole.id,
      cells: [
        `H${index + 1}`,
        hole.name,
        formatObserved(hole.plated),
        words.plan(hole.drillMm),
        words.plan(hole.landMm),
        hole.landMm === null || hole.drillMm === null ? NOT_STATED : words.plan(tidy((hole.landMm - hole.drillMm) / 2)),
        describeNearness(hole),
        words.plan(hole.transitionDistanceMm),
      ],
    })),
  }
}

function makeOpeningTable(design: Design, words: SheetWords): SheetTable {
  const describeNearness = makeNearness(design, words)
  const mm = words.planUnit
  return {
    kind: 'table',
    id: 'coverlay-openings',
    title: 'Coverlay openings',
    keyColumnCount: 1,
    columns: [
      column('Ref.', 11),
      column('Name', 28, 1),
      column('Made by', 16),
      column(`Opening, ${mm}`, 17, 0, true),
      column(`Narrowest web, ${mm}`, 19, 0, true),
      column(`To the nearest bend, ${mm}`, 24, 0, true),
    ],
    rows: design.features.coverlayOpenings.map((opening, index) => ({
      id: opening.id,
      cells: [
        `C${index + 1}`,
        opening.name,
        getChoiceWord(FEATURE_FIELDS.coverlayOpenings.entry.method, opening.method),
        words.plan(opening.openingMm),
        words.plan(opening.webMm),
        describeNearness(opening),
      ],
    })),
  }
}

/** Conductors with a stated current or impedance. */
function makeNeedTable(design: Design, words: SheetWords): SheetTable {
  const designations = nameConductorLayers(design.construction)
  const mm = words.planUnit
  const number = (value: number | null) => (value === null ? '–' : digitsAsEntered(value))
  return {
    kind: 'table',
    id: 'conductor-needs',
    title: 'Conductors with a stated impedance or current',
    keyColumnCount: 1,
    columns: [
      column('Name', 28, 1),
      column('Layer', 19),
      column(`Width, ${mm}`, 15, 0, true),
      column(`Space, ${mm}`, 16, 0, true),
      column('Impedance, Ω', 20, 0, true),
      column('Current, A', 16, 0, true),
      column('Rise allowed, °C', 21, 0, true),
      column('Drop allowed, V', 18, 0, true),
    ],
    rows: design.features.conductors
      .filter(({ currentAmp, impedanceOhm }) => currentAmp !== null || impedanceOhm !== null)
      .map((conductor) => {
        const designation = designations.get(conductor.layerId)
        return {
          id: conductor.id,
          cells: [
            conductor.name,
            designation === undefined ? words.layer(conductor.layerId) : formatDesignation(designation),
            words.plan(conductor.widthMm),
            words.plan(conductor.spaceMm),
            number(conductor.impedanceOhm),
            number(conductor.currentAmp),
            number(conductor.allowedRiseDegC),
            number(conductor.allowedDropVolt),
          ],
        }
      }),
  }
}

function makeOutlineTable({ features }: Design, words: SheetWords): SheetTable {
  const mm = words.planUnit
  return {
    kind: 'table',
    id: 'outline-details',
    title: 'Outline: inside corners and slits',
    keyColumnCount: 1,
    columns: [
      column('Name', 28, 1),
      column('What', 22),
      column(`Inside radius, ${mm}`, 19, 0, true),
      column('Tear stop', 18),
      column(`Slit width, ${mm}`, 17, 0, true),
      column(`End relief diameter, ${mm}`, 21, 0, true),
    ],
    rows: [
      ...features.outlineCorners.map((corner) => ({
        id: `corner-${corner.id}`,
        cells: [
          corner.name,
          'inside corner',
          words.plan(corner.insideRadiusMm),
          formatObserved(corner.tearStop),
          '–',
          '–',
        ],
      })),
      ...features.slits.map((slit) => ({
        id: `slit-${slit.id}`,
        cells: [slit.name, 'slit', '–', '–', words.plan(slit.widthMm), words.plan(slit.endReliefDiameterMm)],
      })),
    ],
  }
}
