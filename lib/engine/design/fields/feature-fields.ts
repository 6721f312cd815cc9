import type { Features } from '../features'
import { CONNECTOR_FIELDS } from './connector-fields'
import { type FieldsOf, LAYER_FIELD, NAMED_FIELDS, NEAREST_BEND_FIELD } from './field'

const TRANSITION_FIELD = {
  label: 'To the rigid-to-flex transition',
  head: 'To the transition',
  inText: 'distance to the transition',
  unit: 'mm',
} as const

const CLEAR_OF_BENDS_FIELD = {
  label: 'No bend within 5 mm',
  head: 'None in 5 mm',
  inText: 'whether no bend lies within 5 mm',
} as const

const IMPEDANCE_FIELD = { label: 'Impedance', unit: 'ohm' } as const

const IMPEDANCE_TERMS = {
  tolerancePct: { label: 'Tolerance, ±', inText: 'tolerance', unit: 'pct' },
  kind: { label: 'Line', inText: 'kind', choices: { single: 'single', pair: 'pair' } },
  referenceLayerId: { label: 'Reference layer', inText: 'reference layer' },
  coupon: { label: 'Coupon', inText: 'coupon' },
} as const

export const FEATURE_FIELDS = {
  none: { label: 'Lists marked as empty', inText: 'lists marked as empty' },
  netClasses: {
    label: 'Net classes',
    inText: 'net class',
    entry: {
      ...NAMED_FIELDS,
      impedanceOhm: IMPEDANCE_FIELD,
      ...IMPEDANCE_TERMS,
      crosstalkLimitPct: {
        label: 'Most near-end crosstalk',
        inText: 'limit of near-end crosstalk',
        unit: 'pct',
        hint: 'Share of the step on the other line.',
      },
      riseTimePs: {
        label: 'Rise time',
        unit: 'ps',
        hint: 'Of the fastest edge, from 0 to 100 % of the step. Shorter coupled lengths then show less crosstalk.',
      },
    },
  },
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
      returnAsLong: { label: 'Return as long', inText: 'whether the return is as long' },
      carriesPower: { label: 'Carries power', inText: 'whether it carries power' },
      netClassId: {
        label: 'Net class',
        inText: 'net class',
        hint: 'Its needs hold for the conductor as far as the conductor states none of its own.',
      },
      impedanceOhm: IMPEDANCE_FIELD,
      impedance: {
        label: 'Controlled impedance',
        inText: 'impedance',
        fields: {
          ...IMPEDANCE_TERMS,
          referenceUnbroken: {
            label: 'Plane unbroken under it',
            inText: 'whether the plane goes on without a gap under it',
            hint: 'Asked where the plane is split: seen in the artwork all along the line.',
          },
        },
      },
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
      clearOfBends: CLEAR_OF_BENDS_FIELD,
      transitionDistanceMm: TRANSITION_FIELD,
      stiffenerEdgeDistanceMm: {
        label: 'To the edge of a stiffener',
        inText: 'distance to the edge of a stiffener',
        unit: 'mm',
      },
      stiffenerHoleMm: {
        label: 'Hole in the stiffener',
        inText: 'hole in the stiffener',
        unit: 'mm',
        hint: '0 where the stiffener closes the hole.',
      },
    },
  },
  pads: {
    label: 'Pads',
    inText: 'pad',
    entry: {
      ...NAMED_FIELDS,
      layerId: LAYER_FIELD,
      zoneId: { label: 'Zone' },
      hasPlatedHole: { label: 'Plated hole' },
      anchorCount: { label: 'Anchors' },
      coverlayCaptureMm: { label: 'Coverlay over rim', inText: 'coverlay over the rim', unit: 'mm' },
      teardrop: { label: 'Teardrop' },
      nearestBend: NEAREST_BEND_FIELD,
      clearOfBends: CLEAR_OF_BENDS_FIELD,
    },
  },
  outlineCorners: {
    label: 'Inside corners of the outline',
    inText: 'outline corner',
    entry: {
      ...NAMED_FIELDS,
      insideRadiusMm: { label: 'Radius', inText: 'inside radius', unit: 'mm' },
      bordersFlex: { label: 'Beside flex', inText: 'whether it borders a flex zone' },
      isPulled: { label: 'Pulled arm', inText: 'whether an arm is pulled there' },
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
      nearestBend: NEAREST_BEND_FIELD,
      clearOfBends: CLEAR_OF_BENDS_FIELD,
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
      landMm: { label: 'Copper under it', inText: 'copper under it', unit: 'mm' },
      neededOpenMm: { label: 'Must stay open', inText: 'what must stay open', unit: 'mm' },
      nearestBend: NEAREST_BEND_FIELD,
      clearOfBends: CLEAR_OF_BENDS_FIELD,
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
      bonded: {
        label: 'Bonded',
        inText: 'when it is bonded',
        choices: { 'before-soldering': 'before soldering', 'after-soldering': 'after soldering' },
      },
      heatRatingDegC: {
        label: 'Bears in soldering',
        inText: 'what it and its bond bear in soldering',
        hint: 'Stiffener or bond, the lower, by the maker’s sheet.',
        unit: 'degC',
      },
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
      tearStop: { label: 'Tear stop at the end', inText: 'tear stop' },
    },
  },
  components: {
    label: 'Components',
    inText: 'component',
    entry: {
      ...NAMED_FIELDS,
      nearestBend: NEAREST_BEND_FIELD,
      clearOfBends: CLEAR_OF_BENDS_FIELD,
      transitionDistanceMm: TRANSITION_FIELD,
      zoneId: { label: 'Zone' },
      side: { label: 'Side', choices: { top: 'top', bottom: 'bottom' } },
      overStiffener: { label: 'Over a stiffener' },
    },
  },
  connectors: { label: 'Connector ends', inText: 'connector end', entry: CONNECTOR_FIELDS },
  registrations: {
    label: 'Registration-critical pairs',
    inText: 'registration',
    entry: {
      ...NAMED_FIELDS,
      neededMm: { label: 'Largest shift that works', inText: 'largest shift that works', unit: 'mm' },
      heldMm: { label: 'Fabricator holds', inText: 'what the fabricator holds', unit: 'mm' },
    },
  },
  rigidEdges: {
    label: 'Edges of rigid zones',
    inText: 'rigid edges:',
    fields: {
      bead: { label: 'Bead', choices: { 'called-out': 'called out', 'ruled-out': 'ruled out' } },
      beadMaterial: { label: 'Bead: material', inText: 'bead material' },
      beadWidthMm: { label: 'Bead: width', inText: 'bead width', unit: 'mm' },
      beadHeightMm: { label: 'Bead: height', inText: 'bead height', unit: 'mm' },
      prepregSetBackMm: {
        label: 'Prepreg ends inside the edge by',
        inText: 'set-back of the prepreg',
        unit: 'mm',
      },
      squeezeOutMm: { label: 'Squeeze-out accepted', inText: 'accepted squeeze-out', unit: 'mm' },
    },
  },
  shieldGround: {
    label: 'Ground of the shield',
    inText: 'shield ground:',
    fields: {
      pointCount: { label: 'Ground points', inText: 'number of ground points' },
      openingsShown: { label: 'Openings on the drawing', inText: 'openings on the drawing' },
      maxResistanceOhm: { label: 'Resistance to ground, at most', inText: 'highest resistance', unit: 'ohm' },
    },
  },
  copperToOutlineMm: { label: 'Minimum distance of copper to the outline', inText: 'copper to outline', unit: 'mm' },
  outlineCutBy: {
    label: 'Outline cut by',
    choices: { laser: 'laser', die: 'hard die', rout: 'routing', 'steel-rule': 'steel-rule die, aligned by hand' },
  },
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
