import { type Fault, layerOf, remove, set, zoneOf } from './fault'

/** Faults of layers and zones. */
export const CONSTRUCTION_FAULTS: readonly Fault[] = [
  [
    'a board that no layer of the flex goes into',
    'zone-joints',
    'open',
    (d) => remove(d, 'sensor', 'l2', 'base', 'l3'),
  ],
  [
    'boards without solder mask',
    'outer-cover',
    'fails',
    (d) => {
      for (const zone of d.construction.zones) remove(d, zone.id, 'mask-top', 'mask-bottom')
      d.construction.layers = d.construction.layers.filter(({ kind }) => kind !== 'solder-mask')
    },
  ],
  ['one board whose mask is missing on one face', 'outer-cover', 'fails', (d) => remove(d, 'sensor', 'mask-bottom')],
  [
    'layers that do not vary at all',
    'tolerances-given',
    'fails',
    (d) => {
      for (const layer of d.construction.layers)
        if (layer.kind !== 'unbonded-gap') Object.assign(layer, { tolerancePlusUm: 0, toleranceMinusUm: 0 })
    },
  ],
  [
    'zones of five metres round a hand-sized outline',
    'statements-agree',
    'fails',
    (d) => {
      for (const zone of d.construction.zones) set(zone, { widthMm: 5000, lengthMm: 5000 })
    },
  ],
  [
    'polyester film under lead-free soldering',
    'solder-heat',
    'fails',
    (d) => set(layerOf(d, 'base'), { materialId: 'pet-film' }),
  ],
  [
    'a coverlay adhesive of 3 um on 12 um copper',
    'copper-encapsulation',
    'fails',
    (d) => set(layerOf(d, 'adhesive-top'), { thicknessUm: 3, tolerancePlusUm: 0.2, toleranceMinusUm: 0.2 }),
  ],
  [
    'hardly any laminate on one side',
    'stack-symmetry',
    'fails',
    (d) => {
      set(layerOf(d, 'laminate-bottom'), { thicknessUm: 20, tolerancePlusUm: 1, toleranceMinusUm: 1 })
    },
  ],
  [
    'foil of 5 um that 4 um of processing eats',
    'finished-copper',
    'open',
    (d) => set(layerOf(d, 'l2'), { thicknessUm: 5, processingLossUm: 4, tolerancePlusUm: 0.2, toleranceMinusUm: 0.2 }),
  ],
  [
    'a tolerance tighter than the layers',
    'thickness-tolerance',
    'fails',
    (d) => {
      zoneOf(d, 'link').statedToleranceUm = 1
    },
  ],
  [
    'a stiffener bond that melts at the reflow peak',
    'solder-heat',
    'fails',
    (d) => set(d.features.stiffeners[0], { heatRatingDegC: 150 }),
  ],
]
