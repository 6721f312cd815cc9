import type { ConnectorFeature } from '../connectors'
import { BRIEF_FIELDS } from './brief-fields'
import { type FieldsOf, NAMED_FIELDS } from './field'

const FIT_FIELDS = {
  partMm: { label: 'Part', inText: 'part', unit: 'mm' },
  toleranceMm: { label: 'Tolerance, ±', inText: 'tolerance', unit: 'mm' },
  minMm: { label: 'Connector, minimum', inText: 'minimum of the connector', unit: 'mm' },
  maxMm: { label: 'Connector, maximum', inText: 'maximum of the connector', unit: 'mm' },
} as const

export const CONNECTOR_FIELDS = {
  ...NAMED_FIELDS,
  zoneId: { label: 'Zone' },
  finish: { label: 'Finish on the contacts', inText: 'finish', choices: BRIEF_FIELDS.surfaceFinish.choices },
  isHardGold: { label: 'The gold is hard', inText: 'whether the gold is hard' },
  matings: { label: 'Matings', hint: 'In the life of the part, tests included.' },
  isBlindInsertion: { label: 'Inserted blind', inText: 'whether it is inserted blind' },
  hasPlaneOrHoleBeforeBend: {
    label: 'Solid plane or hole before the first bend',
    inText: 'whether a solid plane or a hole lies before the first bend',
  },
  firstBendMm: { label: 'Stiffened end to the first bend', unit: 'mm' },
  pitch: { label: 'Pitch', fields: FIT_FIELDS },
  contactWidth: { label: 'Contact width', fields: FIT_FIELDS },
  exposedLength: { label: 'Exposed length', fields: FIT_FIELDS },
  endWidth: { label: 'Width of the end', fields: FIT_FIELDS },
  edgeToContact: { label: 'Edge to the middle of the outer contact', fields: FIT_FIELDS },
  stiffenerLength: { label: 'Stiffener length', fields: FIT_FIELDS },
} as const satisfies FieldsOf<ConnectorFeature>
