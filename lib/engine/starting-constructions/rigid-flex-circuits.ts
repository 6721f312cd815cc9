import { type Design, makeBlankDesign } from '../design'
import {
  adhesive,
  baseFilm,
  bend,
  bondply,
  conductor,
  conductorGroup,
  coverlayFilm,
  noFlowPrepreg,
  rigidLaminate,
  solderMask,
  unbondedGap,
  zone,
} from './building-blocks'

/** Two single-sided flexible outer layers around one rigid layer; in the flexible zone they part into two leaves. */
export function makeThreeLayerOuterFlex(name: string): Design {
  const blank = makeBlankDesign(name)
  const upperLeaf = ['cover-top', 'adhesive-top', 'l1', 'base-top']
  const lowerLeaf = ['base-bottom', 'l3', 'adhesive-bottom', 'cover-bottom']
  const rigid = [...upperLeaf, 'prepreg-upper', 'l2', 'core', 'prepreg-lower', ...lowerLeaf]
  return {
    ...blank,
    brief: { ...blank.brief, circuitType: 'type-4' },
    construction: {
      layers: [
        coverlayFilm({ id: 'cover-top', name: 'Top coverlay film', thicknessUm: 25 }),
        adhesive({ id: 'adhesive-top', name: 'Top coverlay adhesive', thicknessUm: 50 }),
        conductor({ id: 'l1', name: 'L1 flex, signals', plating: 'panel', platingUm: 25 }),
        baseFilm({ id: 'base-top', name: 'Upper base film', thicknessUm: 25 }),
        noFlowPrepreg({ id: 'prepreg-upper', name: 'Upper prepreg', thicknessUm: 100 }),
        conductor({
          id: 'l2',
          name: 'L2 rigid, plane',
          materialId: 'copper-ed',
          coverageFraction: 0.8,
          role: 'plane',
          planePattern: 'solid',
        }),
        rigidLaminate({ id: 'core', name: 'Rigid core', thicknessUm: 200 }),
        unbondedGap('gap', 'Gap between the leaves', 300),
        noFlowPrepreg({ id: 'prepreg-lower', name: 'Lower prepreg', thicknessUm: 100 }),
        baseFilm({ id: 'base-bottom', name: 'Lower base film', thicknessUm: 25 }),
        conductor({ id: 'l3', name: 'L3 flex, signals', plating: 'panel', platingUm: 25 }),
        adhesive({ id: 'adhesive-bottom', name: 'Bottom coverlay adhesive', thicknessUm: 50 }),
        coverlayFilm({ id: 'cover-bottom', name: 'Bottom coverlay film', thicknessUm: 25 }),
      ],
      zones: [
        zone({ id: 'board-a', name: 'Board A', kind: 'rigid', lengthMm: 40, widthMm: 30, layers: rigid }),
        zone({
          id: 'link',
          name: 'Link',
          kind: 'flex',
          lengthMm: 35,
          widthMm: 20,
          layers: [...upperLeaf, 'gap', ...lowerLeaf],
        }),
        zone({ id: 'board-b', name: 'Board B', kind: 'rigid', lengthMm: 25, widthMm: 30, layers: rigid }),
      ],
    },
    bends: [
      bend({
        id: 'fold',
        name: 'Fold at assembly',
        zoneId: 'link',
        insideRadiusMm: 6,
        angleDeg: 90,
        axisLengthMm: 20,
        use: 'fold-once',
        distanceToRigidMm: 3,
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
          lengthMm: 80,
          bendIds: ['fold'],
        }),
        conductorGroup({
          id: 'l3-signals',
          name: 'Signals on L3',
          layerId: 'l3',
          widthMm: 0.15,
          spaceMm: 0.15,
          lengthMm: 80,
          bendIds: ['fold'],
        }),
      ],
    },
  }
}

/** Rigid outer layers, and a two-layer adhesiveless flexible core that runs through the whole part. */
export function makeFourLayerInnerFlex(name: string): Design {
  const blank = makeBlankDesign(name)
  const core = ['l2', 'base', 'l3']
  const flexible = ['cover-top', 'adhesive-top', ...core, 'adhesive-bottom', 'cover-bottom']
  const rigid = [
    'mask-top',
    'l1',
    'laminate-top',
    'prepreg-top',
    ...core,
    'prepreg-bottom',
    'laminate-bottom',
    'l4',
    'mask-bottom',
  ]
  return {
    ...blank,
    brief: { ...blank.brief, circuitType: 'type-4' },
    construction: {
      layers: [
        solderMask({ id: 'mask-top', name: 'Top solder mask', thicknessUm: 25 }),
        conductor({ id: 'l1', name: 'L1 rigid, components', materialId: 'copper-ed', plating: 'panel', platingUm: 25 }),
        rigidLaminate({ id: 'laminate-top', name: 'Upper rigid laminate', thicknessUm: 150 }),
        noFlowPrepreg({ id: 'prepreg-top', name: 'Upper prepreg', thicknessUm: 65 }),
        coverlayFilm({ id: 'cover-top', name: 'Upper coverlay film', thicknessUm: 25 }),
        adhesive({ id: 'adhesive-top', name: 'Upper coverlay adhesive', thicknessUm: 25 }),
        conductor({ id: 'l2', name: 'L2 flex, signals' }),
        baseFilm({ id: 'base', name: 'Flexible base film', thicknessUm: 25 }),
        conductor({ id: 'l3', name: 'L3 flex, return', coverageFraction: 0.6, role: 'mixed' }),
        adhesive({ id: 'adhesive-bottom', name: 'Lower coverlay adhesive', thicknessUm: 25 }),
        coverlayFilm({ id: 'cover-bottom', name: 'Lower coverlay film', thicknessUm: 25 }),
        noFlowPrepreg({ id: 'prepreg-bottom', name: 'Lower prepreg', thicknessUm: 65 }),
        rigidLaminate({ id: 'laminate-bottom', name: 'Lower rigid laminate', thicknessUm: 150 }),
        conductor({ id: 'l4', name: 'L4 rigid, components', materialId: 'copper-ed', plating: 'panel', platingUm: 25 }),
        solderMask({ id: 'mask-bottom', name: 'Bottom solder mask', thicknessUm: 25 }),
      ],
      zones: [
        zone({ id: 'board-a', name: 'Board A', kind: 'rigid', lengthMm: 45, widthMm: 30, layers: rigid }),
        zone({ id: 'link', name: 'Link', kind: 'flex', lengthMm: 40, widthMm: 18, layers: flexible }),
        zone({ id: 'board-b', name: 'Board B', kind: 'rigid', lengthMm: 25, widthMm: 25, layers: rigid }),
      ],
    },
    bends: [
      bend({
        id: 'fold',
        name: 'Fold at assembly',
        zoneId: 'link',
        insideRadiusMm: 3,
        angleDeg: 90,
        axisLengthMm: 18,
        use: 'fold-once',
        distanceToRigidMm: 4,
      }),
    ],
    features: {
      ...blank.features,
      conductors: [
        conductorGroup({
          id: 'l2-signals',
          name: 'Signals on L2',
          layerId: 'l2',
          widthMm: 0.125,
          spaceMm: 0.125,
          lengthMm: 90,
          bendIds: ['fold'],
        }),
        conductorGroup({
          id: 'l3-supply',
          name: 'Supply on L3',
          layerId: 'l3',
          widthMm: 1,
          spaceMm: 0.2,
          lengthMm: 90,
          bendIds: ['fold'],
        }),
      ],
    },
  }
}

/** Rigid outer layers and two flexible pairs that are not bonded to each other between the boards. */
export function makeSixLayerUnbondedLeaves(name: string): Design {
  const blank = makeBlankDesign(name)
  const upperCore = ['l2', 'base-upper', 'l3']
  const lowerCore = ['l4', 'base-lower', 'l5']
  const upperLeaf = ['cover-l2', 'adhesive-l2', ...upperCore, 'adhesive-l3', 'cover-l3']
  const lowerLeaf = ['cover-l4', 'adhesive-l4', ...lowerCore, 'adhesive-l5', 'cover-l5']
  const rigid = [
    'mask-top',
    'l1',
    'laminate-top',
    'prepreg-top',
    ...upperCore,
    'bond-middle',
    ...lowerCore,
    'prepreg-bottom',
    'laminate-bottom',
    'l6',
    'mask-bottom',
  ]
  const cover = (id: string, layer: string) => [
    coverlayFilm({ id: `cover-${id}`, name: `Coverlay film over ${layer}`, thicknessUm: 12.5 }),
    adhesive({ id: `adhesive-${id}`, name: `Coverlay adhesive over ${layer}`, thicknessUm: 20 }),
  ]
  return {
    ...blank,
    brief: { ...blank.brief, circuitType: 'type-4' },
    construction: {
      layers: [
        solderMask({ id: 'mask-top', name: 'Top solder mask', thicknessUm: 25 }),
        conductor({ id: 'l1', name: 'L1 rigid, components', materialId: 'copper-ed', plating: 'panel', platingUm: 25 }),
        rigidLaminate({ id: 'laminate-top', name: 'Upper rigid laminate', thicknessUm: 150 }),
        noFlowPrepreg({ id: 'prepreg-top', name: 'Upper prepreg', thicknessUm: 65 }),
        ...cover('l2', 'L2'),
        conductor({ id: 'l2', name: 'L2 flex, signals', thicknessUm: 12 }),
        baseFilm({ id: 'base-upper', name: 'Upper flexible base film', thicknessUm: 25 }),
        conductor({ id: 'l3', name: 'L3 flex, return', thicknessUm: 12, coverageFraction: 0.6, role: 'mixed' }),
        ...cover('l3', 'L3').reverse(),
        unbondedGap('gap', 'Gap between the leaves', 75),
        bondply({ id: 'bond-middle', name: 'Bonding film between the pairs', thicknessUm: 50 }),
        ...cover('l4', 'L4'),
        conductor({ id: 'l4', name: 'L4 flex, return', thicknessUm: 12, coverageFraction: 0.6, role: 'mixed' }),
        baseFilm({ id: 'base-lower', name: 'Lower flexible base film', thicknessUm: 25 }),
        conductor({ id: 'l5', name: 'L5 flex, signals', thicknessUm: 12 }),
        ...cover('l5', 'L5').reverse(),
        noFlowPrepreg({ id: 'prepreg-bottom', name: 'Lower prepreg', thicknessUm: 65 }),
        rigidLaminate({ id: 'laminate-bottom', name: 'Lower rigid laminate', thicknessUm: 150 }),
        conductor({ id: 'l6', name: 'L6 rigid, components', materialId: 'copper-ed', plating: 'panel', platingUm: 25 }),
        solderMask({ id: 'mask-bottom', name: 'Bottom solder mask', thicknessUm: 25 }),
      ],
      zones: [
        zone({ id: 'board-a', name: 'Board A', kind: 'rigid', lengthMm: 50, widthMm: 40, layers: rigid }),
        zone({
          id: 'link',
          name: 'Link',
          kind: 'flex',
          lengthMm: 45,
          widthMm: 25,
          layers: [...upperLeaf, 'gap', ...lowerLeaf],
        }),
        zone({ id: 'board-b', name: 'Board B', kind: 'rigid', lengthMm: 30, widthMm: 40, layers: rigid }),
      ],
    },
    bends: [
      bend({
        id: 'fold',
        name: 'Fold at assembly',
        zoneId: 'link',
        insideRadiusMm: 4,
        angleDeg: 180,
        axisLengthMm: 25,
        use: 'fold-once',
        distanceToRigidMm: 5,
      }),
    ],
    features: {
      ...blank.features,
      conductors: [
        conductorGroup({
          id: 'l2-signals',
          name: 'Signals on L2',
          layerId: 'l2',
          widthMm: 0.125,
          spaceMm: 0.125,
          lengthMm: 100,
          bendIds: ['fold'],
        }),
        conductorGroup({
          id: 'l5-signals',
          name: 'Signals on L5',
          layerId: 'l5',
          widthMm: 0.125,
          spaceMm: 0.125,
          lengthMm: 100,
          bendIds: ['fold'],
        }),
      ],
    },
  }
}
