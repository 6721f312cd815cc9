import { type Design, makeBlankDesign } from '../design'
import {
  adhesive,
  baseFilm,
  bend,
  conductor,
  conductorGroup,
  coverlayFilm,
  HALF_OUNCE_UM,
  stiffener,
  zone,
} from './building-blocks'

/** One layer of copper between base film and coverlay, with a connector end and a stiffened component area. */
export function makeSingleSided(name: string): Design {
  const blank = makeBlankDesign(name)
  const flexible = ['coverlay-film', 'coverlay-adhesive', 'l1', 'clad-adhesive', 'base']
  return {
    ...blank,
    brief: { ...blank.brief, circuitType: 'type-1' },
    construction: {
      layers: [
        coverlayFilm({ id: 'coverlay-film', name: 'Coverlay film', thicknessUm: 25 }),
        adhesive({ id: 'coverlay-adhesive', name: 'Coverlay adhesive', thicknessUm: 25 }),
        conductor({ id: 'l1', name: 'L1 flex, signals', coverageFraction: 0.5 }),
        adhesive({ id: 'clad-adhesive', name: 'Clad adhesive', thicknessUm: 12.5 }),
        baseFilm({ id: 'base', name: 'Base film', thicknessUm: 25, materialId: 'pi-base-adhesive' }),
        adhesive({ id: 'finger-adhesive', name: 'Finger stiffener adhesive', thicknessUm: 25 }),
        stiffener({ id: 'finger-stiffener', name: 'Finger stiffener', thicknessUm: 225 }),
        adhesive({ id: 'board-adhesive', name: 'Component stiffener adhesive', thicknessUm: 50 }),
        stiffener({
          id: 'board-stiffener',
          name: 'Component stiffener',
          thicknessUm: 800,
          materialId: 'fr4-laminate',
        }),
      ],
      zones: [
        zone({
          id: 'components',
          name: 'Component area',
          kind: 'stiffened',
          lengthMm: 18,
          widthMm: 14,
          layers: [...flexible, 'board-adhesive', 'board-stiffener'],
        }),
        zone({ id: 'tail', name: 'Tail', kind: 'flex', lengthMm: 60, widthMm: 12, layers: flexible }),
        zone({
          id: 'finger',
          name: 'Connector end',
          kind: 'finger',
          lengthMm: 6,
          widthMm: 12.5,
          layers: ['l1', 'clad-adhesive', 'base', 'finger-adhesive', 'finger-stiffener'],
        }),
      ],
    },
    bends: [
      bend({
        id: 'install-bend',
        name: 'Bend to install',
        zoneId: 'tail',
        insideRadiusMm: 2,
        angleDeg: 180,
        axisLengthMm: 12,
        use: 'flex-to-install',
      }),
    ],
    features: {
      ...blank.features,
      conductors: [
        conductorGroup({
          id: 'l1-signals',
          name: 'Signals on L1',
          layerId: 'l1',
          widthMm: 0.2,
          spaceMm: 0.2,
          lengthMm: 80,
          bendIds: ['install-bend'],
        }),
      ],
    },
  }
}

const DOUBLE_SIDED_STACK = ['cover-top', 'adhesive-top', 'l1', 'base', 'l2', 'adhesive-bottom', 'cover-bottom']

interface DoubleSidedOptions {
  plating: 'panel' | 'button'
  foilUm: number
  coverAdhesiveUm: number
  bottomCoverUm: number
}

function doubleSidedLayers({ plating, foilUm, coverAdhesiveUm, bottomCoverUm }: DoubleSidedOptions) {
  return [
    coverlayFilm({ id: 'cover-top', name: 'Top coverlay film', thicknessUm: 25 }),
    adhesive({ id: 'adhesive-top', name: 'Top coverlay adhesive', thicknessUm: coverAdhesiveUm }),
    conductor({ id: 'l1', name: 'L1 flex, signals', thicknessUm: foilUm, plating }),
    baseFilm({ id: 'base', name: 'Base film', thicknessUm: 25 }),
    conductor({
      id: 'l2',
      name: 'L2 flex, return',
      thicknessUm: foilUm,
      plating,
      coverageFraction: 0.6,
      role: 'mixed',
    }),
    adhesive({ id: 'adhesive-bottom', name: 'Bottom coverlay adhesive', thicknessUm: coverAdhesiveUm }),
    coverlayFilm({ id: 'cover-bottom', name: 'Bottom coverlay film', thicknessUm: bottomCoverUm }),
    adhesive({ id: 'stiffener-adhesive', name: 'Stiffener adhesive', thicknessUm: 50 }),
    stiffener({
      id: 'board-stiffener',
      name: 'Component stiffener',
      thicknessUm: 400,
      materialId: 'fr4-laminate',
    }),
  ]
}

/** Two panel-plated layers of copper on an adhesiveless clad, covered on both sides. */
export function makeDoubleSided(name: string): Design {
  const blank = makeBlankDesign(name)
  return {
    ...blank,
    brief: { ...blank.brief, circuitType: 'type-2' },
    construction: {
      layers: doubleSidedLayers({ plating: 'panel', foilUm: HALF_OUNCE_UM, coverAdhesiveUm: 37.5, bottomCoverUm: 25 }),
      zones: [
        zone({
          id: 'end-a',
          name: 'Component area',
          kind: 'stiffened',
          lengthMm: 20,
          widthMm: 16,
          layers: [...DOUBLE_SIDED_STACK, 'stiffener-adhesive', 'board-stiffener'],
        }),
        zone({ id: 'middle', name: 'Middle', kind: 'flex', lengthMm: 70, widthMm: 15, layers: DOUBLE_SIDED_STACK }),
      ],
    },
    bends: [
      bend({
        id: 'install-bend',
        name: 'Bend to install',
        zoneId: 'middle',
        insideRadiusMm: 5,
        angleDeg: 90,
        axisLengthMm: 15,
        use: 'flex-to-install',
      }),
    ],
    features: {
      ...blank.features,
      conductors: [
        conductorGroup({
          id: 'l1-signals',
          name: 'Signals on L1',
          layerId: 'l1',
          widthMm: 0.15,
          spaceMm: 0.15,
          lengthMm: 90,
          bendIds: ['install-bend'],
        }),
      ],
    },
  }
}

/** Two layers, plated on the pads only; in the moving zone the lower copper is left out. */
export function makeDoubleSidedOneLayerInBend(name: string): Design {
  const blank = makeBlankDesign(name)
  return {
    ...blank,
    brief: { ...blank.brief, circuitType: 'type-2' },
    construction: {
      // A thinner cover on the inside of the bend balances the section once the lower copper is gone.
      layers: doubleSidedLayers({ plating: 'button', foilUm: 12, coverAdhesiveUm: 25, bottomCoverUm: 12.5 }),
      zones: [
        zone({
          id: 'end-a',
          name: 'Component area',
          kind: 'stiffened',
          lengthMm: 20,
          widthMm: 16,
          layers: [...DOUBLE_SIDED_STACK, 'stiffener-adhesive', 'board-stiffener'],
        }),
        zone({
          id: 'lead',
          name: 'Lead to the hinge',
          kind: 'flex',
          lengthMm: 30,
          widthMm: 15,
          layers: DOUBLE_SIDED_STACK,
        }),
        zone({
          id: 'hinge',
          name: 'Hinge',
          kind: 'flex',
          lengthMm: 40,
          widthMm: 15,
          layers: DOUBLE_SIDED_STACK.filter((id) => id !== 'l2'),
        }),
      ],
    },
    bends: [
      bend({
        id: 'hinge-bend',
        name: 'Hinge',
        zoneId: 'hinge',
        insideRadiusMm: 12,
        angleDeg: 90,
        axisLengthMm: 15,
        use: 'dynamic',
      }),
      bend({
        id: 'lead-bend',
        name: 'Bend to install',
        zoneId: 'lead',
        insideRadiusMm: 3,
        angleDeg: 90,
        axisLengthMm: 15,
        use: 'flex-to-install',
      }),
    ],
    features: {
      ...blank.features,
      conductors: [
        conductorGroup({
          id: 'l1-signals',
          name: 'Signals on L1',
          layerId: 'l1',
          widthMm: 0.15,
          spaceMm: 0.15,
          lengthMm: 90,
          bendIds: ['hinge-bend', 'lead-bend'],
        }),
      ],
    },
  }
}
