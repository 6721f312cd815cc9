import type { Design } from '@/lib/engine'
import { getFilm, getOnly, getZone, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

const withoutTolerances = (d: Design) => {
  for (const zone of d.construction.zones) zone.statedToleranceUm = null
}

const thicken = (d: Design) => {
  Object.assign(getFilm(d, 'cover-top-adhesive'), { thicknessUm: 100, tolerancePlusUm: 60, toleranceMinusUm: 60 })
}

/** Every sheet held to 1 um, but one. */
const spreadOnly = (layerId: string, toleranceUm: number) => (d: Design) => {
  withoutTolerances(d)
  for (const layer of d.construction.layers) {
    if (layer.kind === 'unbonded-gap') continue
    const um = layer.id === layerId ? toleranceUm : 1
    Object.assign(layer, { tolerancePlusUm: um, toleranceMinusUm: um })
    if (layer.kind === 'conductor' && layer.plating.process !== 'none') layer.plating.toleranceUm = 1
  }
}

/** The zone of the connector end no longer says by itself that it is one. */
const asStiffened = (d: Design): void => {
  Object.assign(getZone(d, 'fingers'), { kind: 'stiffened', connectorWindow: null, contactFinish: null })
}

export const thicknessToleranceExamples: readonly ItemExample[] = [
  { name: 'ordinary films, no tolerance on the drawing', change: withoutTolerances, expect: 'meets' },
  {
    name: 'adhesive of 100 +/- 60 um in the arm, which fits nothing',
    change: (d) => {
      withoutTolerances(d)
      thicken(d)
    },
    expect: 'fails',
  },
  {
    // 40 um of 723: more than the 30 um of thin film, less than a tenth.
    name: 'laminate of 200 +/- 40 um in a board of 0.72 mm',
    change: spreadOnly('core-top', 40),
    expect: 'meets',
  },
  { name: 'laminate of 200 +/- 100 um in the same board', change: spreadOnly('core-top', 100), expect: 'fails' },
  {
    // 15 um of 69: more than a tenth, less than the 30 um of thin film.
    name: 'adhesive of 25 +/- 15 um in the arm',
    change: spreadOnly('cover-top-adhesive', 15),
    expect: 'meets',
  },
  {
    name: 'a tolerance on the drawing of the arm that ordinary films do not hold',
    change: (d) => {
      getZone(d, 'arm').statedToleranceUm = 1
    },
    expect: 'fails',
  },
  {
    name: 'a tolerance on the drawing of the arm that its films just hold, all at their worst at once',
    change: (d) => {
      getZone(d, 'arm').statedToleranceUm = 4.7
    },
    expect: 'meets',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]

export const fittedThicknessExamples: readonly ItemExample[] = [
  { name: 'ordinary films', expect: 'meets' },
  {
    name: 'a tolerance on the drawing that ordinary films do not hold',
    change: (d) => {
      getZone(d, 'fingers').statedToleranceUm = 1
    },
    expect: 'fails',
  },
  {
    name: 'a tolerance on the drawing that its films just hold, all at their worst at once',
    change: (d) => {
      getZone(d, 'fingers').statedToleranceUm = 12.2
    },
    expect: 'meets',
  },
  {
    name: 'a connector end without a tolerance of its own',
    change: (d) => {
      withoutTolerances(d)
      Object.assign(getFilm(d, 'stiffener-adhesive'), { thicknessUm: 100, tolerancePlusUm: 90, toleranceMinusUm: 90 })
    },
    expect: 'fails',
  },
  {
    name: 'a zone that a listed connector makes an end',
    change: (d) => {
      asStiffened(d)
      getZone(d, 'fingers').statedToleranceUm = 1
    },
    expect: 'fails',
  },
  {
    name: 'the only connector, of which nobody said where it goes, has one end to go to',
    change: (d) => {
      getOnly(d.features.connectors).zoneId = null
    },
    expect: 'meets',
  },
  {
    name: 'no connector end',
    change: (d) => {
      d.features.connectors = []
      const fingers = getZone(d, 'fingers')
      Object.assign(fingers, { kind: 'stiffened', connectorWindow: null, contactFinish: null })
    },
    expect: 'not-applicable',
  },
  {
    name: 'no zone is a connector end, and nobody said where the connector goes',
    change: (d) => {
      Object.assign(getZone(d, 'fingers'), { kind: 'stiffened', connectorWindow: null, contactFinish: null })
      for (const connector of d.features.connectors) connector.zoneId = null
    },
    expect: 'not-computed',
  },
  {
    name: 'a second connector, and nobody said where it goes',
    change: (d) => {
      const socket = getOnly(d.features.connectors)
      d.features.connectors.push({ ...structuredClone(socket), id: 'second', name: 'Second socket', zoneId: null })
    },
    expect: 'not-computed',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
