import type { Bend } from '../bend'
import { type FieldsOf, NAMED_FIELDS } from './field'

export const BEND_FIELDS = {
  ...NAMED_FIELDS,
  zoneId: { label: 'Zone' },
  use: {
    label: 'Use',
    choices: {
      'fold-once': 'fold once at assembly',
      'flex-to-install': 'flex to install',
      dynamic: 'dynamic, in service',
    },
  },
  insideRadiusMm: { label: 'Inside radius', unit: 'mm' },
  radiusToleranceMm: { label: 'Tolerance of the radius, ±', inText: 'radius tolerance', unit: 'mm' },
  angleDeg: { label: 'Angle', unit: 'deg' },
  insideFace: {
    label: 'On the inside',
    inText: 'face on the inside of the bend',
    choices: { top: 'top face', bottom: 'bottom face' },
  },
  axisLengthMm: { label: 'Length along the axis', unit: 'mm', hint: 'The width of the part there.' },
  motion: {
    label: 'Motion',
    choices: { 'one-way': 'to the radius and back', reversed: 'to both sides of flat' },
  },
  flexesFromRadiusMm: {
    label: 'Flexes from radius',
    inText: 'inside radius at the flatter end of the motion',
    unit: 'mm',
    hint: 'Inside radius at the flatter end of the motion. Leave blank where it flexes from flat.',
  },
  flexesFromAngleDeg: {
    label: 'Flexes from angle',
    inText: 'angle at the flatter end of the motion',
    unit: 'deg',
    hint: 'In place of a radius: the angle at the flatter end, over the same length of the part.',
  },
  foldedToRadiusMm: {
    label: 'Folded first to radius',
    inText: 'inside radius of an earlier fold',
    unit: 'mm',
    hint: 'Inside radius of a fold made here once, for instance to get the part in. It uses up life.',
  },
  pullN: {
    label: 'Pull along the part',
    inText: 'pull',
    unit: 'newton',
    hint: 'Force along the part while it is bent, over its whole width. Blank and 0: none.',
  },
  twistDeg: {
    label: 'Twist',
    unit: 'deg',
    hint: 'Turn about the length of the part, from one end of the motion to the other. Blank and 0: none.',
  },
  twistLengthMm: {
    label: 'Length that twists',
    inText: 'length that twists',
    unit: 'mm',
    hint: 'Needed where a twist is stated.',
  },
  requiredCycles: {
    label: 'Required cycles',
    head: 'Cycles',
    unit: 'cycles',
    hint: 'Needed for dynamic use only.',
  },
  radiusHeldBy: {
    label: 'Radius held by',
    inText: 'what holds the radius',
    hint: 'Without it, handling can bend the part tighter than was checked.',
    choices: {
      former: 'a former',
      stop: 'a stop',
      channel: 'a channel',
      'bonded-in-place': 'bonded in place',
      'between-faces': 'two parallel faces, nothing inside',
      'free-loop': 'nothing, a free loop by design',
      nothing: 'nothing',
    },
  },
  faceGapMm: {
    label: 'Gap between the faces',
    inText: 'gap between the faces',
    unit: 'mm',
    hint: 'Between two parallel faces that hold a fold of 180°. The tip of the fold is tighter than half of it.',
  },
  distanceToRigidMm: {
    label: 'Distance to the rigid edge',
    head: 'To the rigid edge',
    unit: 'mm',
    hint: "From the bend's nearest edge to a rigid or stiffened zone.",
  },
  strainReliefAtTransition: {
    label: 'Strain relief at that transition',
    head: 'Relief at that edge',
    inText: 'strain relief at transition',
  },
  strainReliefKind: {
    label: 'Kind of strain relief',
    choices: {
      bead: 'a flexible bead',
      'cover-under-edge': 'coverlay under the edge',
      'rounded-edge': 'a rounded edge',
    },
  },
  strainReliefWidthMm: { label: 'Width of the strain relief', unit: 'mm', hint: 'From the rigid edge.' },
  leafLengths: {
    label: 'Lengths of the leaves',
    hint: 'Of leaves that are not bonded.',
    choices: {
      equal: 'equal',
      'equal-free-to-buckle': 'equal, with room for the inner ones to buckle',
      stepped: 'stepped',
    },
  },
  leafStepMm: {
    label: 'Step of the leaves',
    hint: 'By how much the outermost leaf is longer than the innermost.',
    unit: 'mm',
  },
  triedOnModel: { label: 'Tried on a paper or film model', head: 'Tried on a model', inText: 'tried on a model' },
  flexTest: {
    label: 'Flex test',
    fields: {
      cyclesPerMinute: { label: 'Test: cycles per minute', inText: 'rate', unit: 'cycles-per-minute' },
      travelMm: { label: 'Test: travel', inText: 'travel', unit: 'mm' },
      mandrelDiameterMm: { label: 'Test: mandrel diameter', inText: 'mandrel diameter', unit: 'mm' },
      pointsOfApplication: { label: 'Test: points of application', inText: 'points of application' },
    },
  },
  forming: {
    label: 'Forming',
    fields: {
      method: {
        label: 'Formed',
        inText: 'method',
        choices: { tool: 'with a tool', 'by-hand-over-former': 'by hand over a former', 'by-hand': 'by hand' },
      },
      by: {
        label: 'Formed by',
        inText: 'by whom',
        choices: {
          fabricator: 'the fabricator',
          assembler: 'the assembler',
          team: 'our own people',
          user: 'the installer',
        },
      },
      springbackAllowed: { label: 'Springback allowed for', inText: 'springback allowed for' },
    },
  },
  inProduct: {
    label: 'In the product',
    fields: {
      handlingCycles: {
        label: 'Worked before and beside service',
        inText: 'handling count',
        unit: 'cycles',
        hint: 'In assembly, test, rework and service calls.',
      },
      isTiedDown: { label: 'Tied down against shock and vibration', inText: 'tied down' },
      furtherMotion: {
        label: 'Further motion',
        choices: {
          none: 'none',
          twist: 'it twists',
          'second-direction': 'it bends in a second direction',
          'moves-after-fold': 'it moves where it was folded',
        },
      },
      rubsOn: {
        label: 'Rubs on',
        inText: 'what it rubs on',
        choices: {
          nothing: 'nothing',
          'guide-with-radius': 'a guide with a radius',
          'edge-or-surface': 'an edge or a surface',
        },
      },
      followedInEnclosure: {
        label: 'Followed in the model of the enclosure',
        inText: 'followed in the model of the enclosure',
        hint: 'Through its motion, with slack and clearance.',
      },
    },
  },
  note: { label: 'Note' },
} as const satisfies FieldsOf<Bend>
