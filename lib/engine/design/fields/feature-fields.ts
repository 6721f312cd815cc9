import type { Features } from '../features'
import { type FieldsOf, LAYER_FIELD, NAMED_FIELDS, NEAREST_BEND_FIELD } from './field'

const TRANSITION_FIELD = {
  label: 'To the rigid-to-flex transition',
  head: 'To the transition',
  inText: 'distance to the transition',
  unit: 'mm',
} as const

export const FEATURE_FIELDS = {
  none: { label: 'Lists marked as empty', inText: 'lists marked as empty' },
  conductors: {
    label: 'Conductors',
    inText: 'conductor',
    entry: {
      ...NAMED_FIELDS,
      layerId: LAYER_FIELD,
      widthMm: { label: 'Width', unit: 'mm' },
      spaceMm: { label: 'Space', unit: 'mm' },
      lengthMm: { label: 'Length', unit: 'mm' },
      currentAmp: { label: 'Current', unit: 'amp' },
      allowedRiseDegC: { label: 'Allowed rise', unit: 'degC' },
      allowedDropVolt: { label: 'Allowed drop', unit: 'volt' },
      impedanceOhm: { label: 'Impedance', unit: 'ohm' },
      voltageVolt: {
        label: 'Voltage to its neighbour',
        hint: 'Highest working voltage, peak or direct; 0 within one net.',
        unit: 'volt',
      },
      isCovered: { label: 'Covered all along', inText: 'whether it is covered all along' },
      frequencyMhz: { label: 'Highest frequency', unit: 'mhz' },
      crossings: {
        label: 'Crossings of bends',
        inText: 'crossings',
        entry: {
          bendId: { label: 'Bend' },
          angleToAxisDeg: {
            label: 'Angle to the axis, degrees',
            head: 'Angle to the axis',
            inText: 'angle to the bend axis',
            unit: 'deg',
          },
          widthChangesInside: { label: 'Width changes inside' },
          directionChangesInside: { label: 'Direction changes inside' },
        },
      },
    },
  },
  holes: {
    label: 'Holes',
    inText: 'hole',
    entry: {
      ...NAMED_FIELDS,
      zoneId: { label: 'Zone' },
      plated: { label: 'Plated' },
      drillMm: { label: 'Drill', unit: 'mm' },
      landMm: { label: 'Land', unit: 'mm' },
      fromLayerId: { label: 'From layer', inText: 'first layer' },
      toLayerId: { label: 'To layer', inText: 'last layer' },
      filling: {
        label: 'Filling',
        choices: {
          open: 'open',
          covered: 'covered',
          filled: 'filled',
          'filled-and-capped': 'filled and capped',
        },
      },
      wallPlatingUm: { label: 'Wall plating, thickness', inText: 'wall plating', unit: 'um' },
      nearestBend: NEAREST_BEND_FIELD,
      transitionDistanceMm: TRANSITION_FIELD,
    },
  },
  pads: {
    label: 'Pads',
    inText: 'pad',
    entry: {
      ...NAMED_FIELDS,
      layerId: LAYER_FIELD,
      hasPlatedHole: { label: 'Plated hole' },
      anchorCount: { label: 'Anchors' },
      coverlayCaptureMm: { label: 'Coverlay over rim', inText: 'coverlay over the rim', unit: 'mm' },
      teardrop: { label: 'Teardrop' },
    },
  },
  outlineCorners: {
    label: 'Inside corners of the outline',
    inText: 'outline corner',
    entry: {
      ...NAMED_FIELDS,
      insideRadiusMm: { label: 'Radius', inText: 'inside radius', unit: 'mm' },
      tearStop: { label: 'Tear stop' },
    },
  },
  widthSteps: {
    label: 'Changes of conductor width',
    inText: 'width step',
    entry: {
      ...NAMED_FIELDS,
      layerId: LAYER_FIELD,
      wideMm: { label: 'Wide side', unit: 'mm' },
      narrowMm: { label: 'Narrow side', unit: 'mm' },
      taperLengthMm: { label: 'Over a length of', inText: 'taper length', unit: 'mm' },
    },
  },
  coverlayOpenings: {
    label: 'Coverlay openings',
    inText: 'coverlay opening',
    entry: {
      ...NAMED_FIELDS,
      method: { label: 'Made by', choices: { drill: 'drilling', punch: 'punching', laser: 'laser' } },
      openingMm: { label: 'Opening', unit: 'mm' },
      webMm: { label: 'Narrowest web', unit: 'mm' },
      nearestBend: NEAREST_BEND_FIELD,
    },
  },
  stiffeners: {
    label: 'Stiffeners',
    inText: 'stiffener',
    entry: {
      ...NAMED_FIELDS,
      layerId: LAYER_FIELD,
      purpose: {
        label: 'For',
        inText: 'purpose',
        choices: { connector: 'a connector', components: 'components', thickness: 'thickness', handling: 'handling' },
      },
      coverlayOverlapMm: { label: 'Past the coverlay end', inText: 'overlap with the coverlay', unit: 'mm' },
      nearestBend: NEAREST_BEND_FIELD,
      onDrawing: { label: 'On the drawing' },
    },
  },
  slits: {
    label: 'Slits and cut-outs',
    inText: 'slit',
    entry: {
      ...NAMED_FIELDS,
      endReliefDiameterMm: { label: 'Relief at the end, diameter', inText: 'end relief diameter', unit: 'mm' },
      widthMm: { label: 'Width', unit: 'mm' },
    },
  },
  components: {
    label: 'Components',
    inText: 'component',
    entry: {
      ...NAMED_FIELDS,
      nearestBend: NEAREST_BEND_FIELD,
      transitionDistanceMm: TRANSITION_FIELD,
      overStiffener: { label: 'Over a stiffener' },
    },
  },
  copperToOutlineMm: { label: 'Minimum distance of copper to the outline', inText: 'copper to outline', unit: 'mm' },
  outline: {
    label: 'Outline',
    fields: {
      verticesMm: { label: 'Corners', unit: 'mm' },
      rollingDirection: {
        label: 'Foil’s rolling direction',
        inText: 'rolling direction',
        choices: { 'along-x': 'along x', 'along-y': 'along y', either: 'does not matter' },
      },
    },
  },
  routing: {
    label: 'Routing',
    fields: {
      cornersCurved: { label: 'Conductors turn in curves, not corners', inText: 'corners curved' },
      evenlySpacedInBends: { label: 'Conductors are evenly spaced in bends', inText: 'evenly spaced in bends' },
      staggeredOnAdjacentLayers: {
        label: 'Conductors on adjacent layers are staggered',
        inText: 'staggered on adjacent layers',
      },
      coverlayEdgeInsideBend: {
        label: 'A coverlay or stiffener edge lies inside a bend',
        inText: 'coverlay edge inside a bend',
      },
      cutOutsConsideredAtTightBends: {
        label: 'Cut-outs were considered at tight bends',
        inText: 'cut-outs considered at tight bends',
      },
      layersNamedOnDrawing: {
        label: 'The drawing names all layers, flex layers apart',
        inText: 'layers named on drawing',
      },
      bendsCalledOutOnDrawing: { label: 'The drawing calls out every bend', inText: 'bends called out on drawing' },
      coverlayDetailOnDrawing: {
        label: 'The drawing shows coverlay, stiffener and adhesive details',
        inText: 'coverlay detail on drawing',
      },
    },
  },
} as const satisfies FieldsOf<Features>
