import type { Plan } from '@/lib/plan'
import { type FieldsOf, LAYER_FIELD, NAMED_FIELDS } from './field'

const ID = { id: { label: 'Id' } } as const
const AT = { label: 'Place', unit: 'mm' } as const
const FROM = { label: 'From', inText: 'start', unit: 'mm' } as const
const TO = { label: 'To', inText: 'end', unit: 'mm' } as const
const FACE = { label: 'Face', choices: { top: 'top face', bottom: 'bottom face' } } as const
const NODES = {
  label: 'Path',
  entry: {
    atMm: { label: 'Point', unit: 'mm' },
    viaMm: { label: 'Arc through', inText: 'arc to the next point through', unit: 'mm' },
  },
} as const
const HEIGHT = { label: 'Height', unit: 'mm' } as const
const WIDTH = { label: 'Width', unit: 'mm' } as const

export const PLAN_FIELDS = {
  outline: { ...NODES, label: 'Outline' },
  rollingDirectionDeg: {
    label: 'Rolling direction of the foil',
    inText: 'rolling direction of the foil, from x',
    unit: 'deg',
    hint: 'Counter-clockwise from x, as the plan is drawn: 0 lies along x, 90 across.',
  },
  cutOuts: { label: 'Cut-outs', inText: 'cut-out', entry: { ...NAMED_FIELDS, nodes: NODES } },
  slits: {
    label: 'Slits drawn',
    inText: 'drawn slit',
    entry: {
      ...NAMED_FIELDS,
      slitId: { label: 'Slit' },
      nodes: NODES,
      widthMm: WIDTH,
      startReliefDiameterMm: { label: 'Relief at its start', unit: 'mm' },
      endReliefDiameterMm: { label: 'Relief at its end', unit: 'mm' },
    },
  },
  dividingLines: { label: 'Dividing lines', inText: 'dividing line', entry: { ...NAMED_FIELDS, nodes: NODES } },
  areas: {
    label: 'Areas',
    inText: 'area',
    entry: { ...NAMED_FIELDS, zoneId: { label: 'Zone' }, markMm: { label: 'Mark', unit: 'mm' } },
  },
  bendLines: {
    label: 'Bend lines',
    inText: 'bend line',
    entry: { ...ID, bendId: { label: 'Bend' }, fromMm: FROM, toMm: TO },
  },
  stiffeners: {
    label: 'Stiffeners drawn',
    inText: 'drawn stiffener',
    entry: { ...ID, stiffenerId: { label: 'Stiffener' }, nodes: NODES },
  },
  connectorEnds: {
    label: 'Connector ends drawn',
    inText: 'drawn connector end',
    entry: {
      ...ID,
      connectorId: { label: 'Connector' },
      fromMm: FROM,
      toMm: TO,
      insertionDepthMm: { label: 'Insertion depth', unit: 'mm' },
      contactCount: { label: 'Contacts' },
      firstContactMm: { label: 'First contact', unit: 'mm' },
      contactStepMm: { label: 'Step between contacts', unit: 'mm' },
      contactLengthMm: { label: 'Length of a contact', unit: 'mm' },
      platedLengthMm: { label: 'Plated length', unit: 'mm' },
      target: {
        label: 'Target when folded',
        inText: 'target when folded',
        fields: {
          atMm: {
            label: 'Comes to lie at',
            inText: 'place of the target',
            unit: 'mm',
            hint: 'Middle of the edge, halfway through its thickness: x and y of the plan, z from the top face of the area that stays.',
          },
          pointsTo: { label: 'Points to', inText: 'direction of the target' },
          topFaces: { label: 'Top face looks to', inText: 'direction in which the top face looks' },
          withinMm: { label: 'May be off by', inText: 'how far the end may be off', unit: 'mm' },
          withinDeg: { label: 'May be turned by', inText: 'how far the end may be turned', unit: 'deg' },
        },
      },
    },
  },
  coverlayOpenings: {
    label: 'Coverlay openings drawn',
    inText: 'drawn coverlay opening',
    entry: { ...ID, openingId: { label: 'Opening' }, layerId: LAYER_FIELD, nodes: NODES },
  },
  holes: {
    label: 'Holes drawn',
    inText: 'drawn hole',
    entry: {
      ...ID,
      holeId: { label: 'Hole' },
      atMm: AT,
      columns: { label: 'Columns' },
      rows: { label: 'Rows' },
      columnStepMm: { label: 'Step between columns', unit: 'mm' },
      rowStepMm: { label: 'Step between rows', unit: 'mm' },
    },
  },
  pads: {
    label: 'Pads drawn',
    inText: 'drawn pad',
    entry: {
      ...ID,
      padId: { label: 'Pad' },
      atMm: AT,
      sizeMm: { label: 'Size', unit: 'mm' },
      isRound: { label: 'Round' },
      anchorsMm: { label: 'Anchors', unit: 'mm' },
    },
  },
  components: {
    label: 'Components drawn',
    inText: 'drawn component',
    entry: { ...ID, componentId: { label: 'Component' }, face: FACE, nodes: NODES, heightMm: HEIGHT },
  },
  routes: {
    label: 'Conductor routes',
    inText: 'conductor route',
    entry: { ...ID, conductorId: { label: 'Conductor' }, layerId: LAYER_FIELD, nodes: NODES, widthMm: WIDTH },
  },
  corners: {
    label: 'Corners placed',
    inText: 'placed corner',
    entry: { ...ID, cornerId: { label: 'Corner' }, atMm: AT },
  },
  datums: {
    label: 'Datums',
    inText: 'datum',
    entry: { ...ID, letter: { label: 'Letter' }, fromMm: FROM, toMm: TO },
  },
  dimensions: {
    label: 'Dimensions',
    inText: 'dimension',
    entry: {
      ...ID,
      direction: {
        label: 'Direction',
        choices: { 'along-x': 'along x', 'along-y': 'along y', straight: 'straight from point to point' },
      },
      fromMm: FROM,
      toMm: TO,
      plusMm: { label: 'Tolerance, plus', unit: 'mm' },
      minusMm: { label: 'Tolerance, minus', unit: 'mm' },
      isReference: { label: 'For reference' },
    },
  },
  notes: {
    label: 'Notes on the plan',
    inText: 'note on the plan',
    entry: { ...ID, text: { label: 'Text' }, atMm: AT },
  },
  markings: {
    label: 'Markings drawn',
    inText: 'drawn marking',
    entry: { ...ID, text: { label: 'Text' }, face: FACE, atMm: AT, heightMm: HEIGHT },
  },
  array: {
    label: 'Array drawn',
    inText: 'drawn array',
    fields: {
      columns: { label: 'Columns' },
      rows: { label: 'Rows' },
      columnStepMm: { label: 'Step between columns', unit: 'mm' },
      rowStepMm: { label: 'Step between rows', unit: 'mm' },
      frameMm: { label: 'Frame', unit: 'mm' },
      tabs: { label: 'Tabs', entry: { ...ID, atMm: AT, widthMm: WIDTH } },
      fiducials: { label: 'Fiducials', entry: { ...ID, atMm: AT } },
    },
  },
  housing: {
    label: 'Room for the folded part',
    inText: 'room for the folded part',
    fields: {
      heldAreaId: { label: 'Area that stays', hint: 'The others fold about it; the largest where none is named.' },
      alongXMm: { label: 'Room along x', unit: 'mm' },
      alongYMm: { label: 'Room along y', unit: 'mm' },
      heightMm: {
        label: 'Room in height',
        unit: 'mm',
        hint: 'Square to the area that stays, on both sides of it together.',
      },
    },
  },
} as const satisfies FieldsOf<Plan>
