import { CLEAR_OF_BENDS_MM, type Design, FEATURE_FIELDS, getChoiceWord, NOT_STATED } from '@/lib/engine'
import { tidy } from '@/lib/engine/numerics'
import { formatDesignation, nameConductorLayers } from '../../layer-designations'
import { makePlanReferences } from '../../plan/references'
import { nameBends } from './bends'
import { makeNeedTable, makeNetClassTable } from './conductor-needs'
import { makeLandTable } from './lands'
import type { SheetColumn, SheetTable } from './model'
import { formatObserved, type SheetWords } from './words'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

const HOLE_FIELDS = FEATURE_FIELDS.holes.entry
const OPENING_FIELDS = FEATURE_FIELDS.coverlayOpenings.entry

interface NearBend {
  readonly clearOfBends?: boolean | null
  readonly nearestBend: { readonly bendId: string; readonly distanceMm: number | null } | null
}

function makeNearness(design: Design, words: SheetWords): (feature: NearBend) => string {
  const bends = nameBends(design)
  return ({ nearestBend, clearOfBends }) =>
    nearestBend === null
      ? clearOfBends === true
        ? `more than ${words.plan(CLEAR_OF_BENDS_MM)}`
        : NOT_STATED
      : `${words.plan(nearestBend.distanceMm)} (${bends.get(nearestBend.bendId) ?? nearestBend.bendId})`
}

/** Where most entries have no such thing, a blank says nothing that anybody has to ask. */
const planOrDash = (valueMm: number | null, words: SheetWords) => (valueMm === null ? '–' : words.plan(valueMm))

/** Tables of what was typed in or measured, each only where there is something. */
export function makeFeatureTables(design: Design, words: SheetWords): SheetTable[] {
  return [
    makeHoleTable(design, words),
    makeOpeningTable(design, words),
    makeNetClassTable(design, words),
    makeNeedTable(design, words),
    makeLandTable(design, words),
    makeOutlineTable(design, words),
  ].filter((table) => table.rows.length > 0)
}

/** Conductor layers that a hole joins, by their designations: `L1–L4`. */
function makeSpan({ construction }: Design) {
  const designations = nameConductorLayers(construction)
  const nameEnd = (layerId: string | null) => {
    const designation = layerId === null ? undefined : designations.get(layerId)
    return designation === undefined ? NOT_STATED : formatDesignation(designation)
  }
  return ({ fromLayerId, toLayerId, plated }: Design['features']['holes'][number]) =>
    fromLayerId === null && toLayerId === null
      ? orDashUnplated(NOT_STATED, plated)
      : `${nameEnd(fromLayerId)} to ${nameEnd(toLayerId)}`
}

/** A hole without plating joins no layers and has no land: nothing is open where nothing is stated of it. */
function orDashUnplated(text: string, plated: boolean | null): string {
  return plated === false && text === NOT_STATED ? '–' : text
}

function makeHoleTable(design: Design, words: SheetWords): SheetTable {
  const describeNearness = makeNearness(design, words)
  const describeSpan = makeSpan(design)
  const mm = words.planUnit
  return {
    kind: 'table',
    id: 'holes',
    title: 'Holes and lands',
    keyColumnCount: 1,
    columns: [
      column('Ref.', 11),
      column(HOLE_FIELDS.name.label, 28, 1),
      column(HOLE_FIELDS.zoneId.label, 11),
      column('Layers', 16),
      column(HOLE_FIELDS.filling.label, 18),
      column(HOLE_FIELDS.plated.label, 14),
      column(`Wall plating, ${words.thicknessUnit}`, 16, 0, true),
      column(`${HOLE_FIELDS.drillMm.label}, ${mm}`, 15, 0, true),
      column(`${HOLE_FIELDS.landMm.label}, ${mm}`, 16, 0, true),
      column(`Ring by design, ${mm}`, 20, 0, true),
      column(`${HOLE_FIELDS.nearestBend.head}, ${mm}`, 24, 0, true),
      column(`${HOLE_FIELDS.transitionDistanceMm.head}, ${mm}`, 22, 0, true),
      column(`${HOLE_FIELDS.stiffenerHoleMm.label}, ${mm}`, 20, 0, true),
      column(`${HOLE_FIELDS.stiffenerEdgeDistanceMm.label}, ${mm}`, 22, 0, true),
    ],
    rows: design.features.holes.map((hole, index) => ({
      id: hole.id,
      cells: [
        `H${index + 1}`,
        hole.name,
        hole.zoneId === null ? NOT_STATED : words.zone(hole.zoneId),
        describeSpan(hole),
        orDashUnplated(getChoiceWord(HOLE_FIELDS.filling, hole.filling), hole.plated),
        formatObserved(hole.plated),
        orDashUnplated(
          hole.wallPlatingUm === null ? NOT_STATED : words.enteredThickness(hole.wallPlatingUm),
          hole.plated,
        ),
        words.plan(hole.drillMm),
        orDashUnplated(words.plan(hole.landMm), hole.plated),
        orDashUnplated(
          hole.landMm === null || hole.drillMm === null
            ? NOT_STATED
            : words.plan(tidy((hole.landMm - hole.drillMm) / 2)),
          hole.plated,
        ),
        describeNearness(hole),
        words.plan(hole.transitionDistanceMm),
        planOrDash(hole.stiffenerHoleMm, words),
        planOrDash(hole.stiffenerEdgeDistanceMm, words),
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
      column(OPENING_FIELDS.method.label, 16),
      column(`${OPENING_FIELDS.openingMm.label}, ${mm}`, 17, 0, true),
      column(`${OPENING_FIELDS.webMm.label}, ${mm}`, 19, 0, true),
      column(`${OPENING_FIELDS.landMm.label}, ${mm}`, 19, 0, true),
      column(`${OPENING_FIELDS.neededOpenMm.label}, ${mm}`, 19, 0, true),
      column(`${OPENING_FIELDS.nearestBend.head}, ${mm}`, 24, 0, true),
    ],
    rows: design.features.coverlayOpenings.map((opening, index) => ({
      id: opening.id,
      cells: [
        `C${index + 1}`,
        opening.name,
        getChoiceWord(FEATURE_FIELDS.coverlayOpenings.entry.method, opening.method),
        words.plan(opening.openingMm),
        words.plan(opening.webMm),
        words.plan(opening.landMm),
        words.plan(opening.neededOpenMm),
        describeNearness(opening),
      ],
    })),
  }
}

function makeOutlineTable(design: Design, words: SheetWords): SheetTable {
  const { features } = design
  const mm = words.planUnit
  const { tearStops } = makePlanReferences(design)
  const stop = ({ id, tearStop }: { readonly id: string; readonly tearStop: boolean | null }) =>
    [formatObserved(tearStop), tearStops.get(id) ?? []].flat().join(', ')
  return {
    kind: 'table',
    id: 'outline-details',
    title: 'Outline: inside corners and slits',
    keyColumnCount: 1,
    columns: [
      column('Name', 28, 1),
      column('What', 22),
      column(`Inside radius, ${mm}`, 19, 0, true),
      column(FEATURE_FIELDS.outlineCorners.entry.tearStop.label, 18),
      column(`Slit width, ${mm}`, 17, 0, true),
      column(`End relief diameter, ${mm}`, 21, 0, true),
    ],
    rows: [
      ...features.outlineCorners.map((corner) => ({
        id: `corner-${corner.id}`,
        cells: [corner.name, 'inside corner', words.plan(corner.insideRadiusMm), stop(corner), '–', '–'],
      })),
      ...features.slits.map((slit) => ({
        id: `slit-${slit.id}`,
        cells: [slit.name, 'slit', '–', stop(slit), words.plan(slit.widthMm), words.plan(slit.endReliefDiameterMm)],
      })),
    ],
  }
}
