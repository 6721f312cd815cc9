import { type Fault, set } from './fault'

/** Faults of the brief and of what is agreed for the order. */
export const BRIEF_FAULTS: readonly Fault[] = [
  [
    '185 in service, degrees Fahrenheit typed for Celsius',
    'operating-temperature',
    'fails',
    (d) => set(d.brief, { operatingMaxDegC: 185 }),
  ],
  [
    'type 1 for four layers',
    'circuit-type',
    'fails',
    (d) => {
      d.brief.circuitType = 'type-1'
    },
  ],
  [
    'moving, and stated as use A alone',
    'bend-use',
    'fails',
    (d) => {
      d.brief.installationUses = ['use-a']
    },
  ],
  [
    'no electrical test',
    'electrical-test',
    'fails',
    (d) => {
      d.brief.electricalTest = false
    },
  ],
  [
    'a freeze before the review',
    'manufacturing-review',
    'fails',
    (d) => {
      d.brief.manufacturingReviewDate = '2027-04-01'
    },
  ],
  [
    'electrical test without a voltage',
    'test-terms',
    'open',
    (d) => {
      d.brief.acceptance.testVoltageVolt = null
    },
  ],
]
