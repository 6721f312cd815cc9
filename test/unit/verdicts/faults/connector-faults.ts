import { type Fault, set, zoneOf } from './fault'

/** Faults of the end that goes into a connector. */
export const CONNECTOR_FAULTS: readonly Fault[] = [
  [
    'contacts that touch, each dimension within the drawing',
    'contact-geometry',
    'fails',
    (d) => set(d.features.connectors[0], { contactWidth: { partMm: 0.5, toleranceMm: 0.03, minMm: 0.25, maxMm: 0.6 } }),
  ],
  [
    'contacts longer than the end that carries them',
    'statements-agree',
    'fails',
    (d) => set(d.features.connectors[0], { exposedLength: { partMm: 9, toleranceMm: 0.2, minMm: 6.5, maxMm: null } }),
  ],
  [
    'a finger in a connector of half its thickness',
    'finger-thickness',
    'fails',
    (d) => {
      zoneOf(d, 'finger').connectorWindow = { minUm: 100, maxUm: 160 }
    },
  ],
  [
    'a finger of which nobody stated the connector',
    'finger-thickness',
    'open',
    (d) => {
      zoneOf(d, 'finger').connectorWindow = null
    },
  ],
  [
    'a finger finished for soldering alone',
    'contact-finish',
    'fails',
    (d) => set(d.features.connectors[0], { finish: 'organic-solderability-preservative' }),
  ],
  [
    '500 matings on immersion gold',
    'contact-finish',
    'fails',
    (d) =>
      set(d.features.connectors[0], {
        finish: 'immersion-gold-over-electroless-nickel',
        matings: 500,
        isHardGold: false,
      }),
  ],
  [
    'contacts at another pitch than the connector',
    'contact-geometry',
    'fails',
    (d) => set(d.features.connectors[0]?.pitch, { partMm: 0.8 }),
  ],
  [
    'no connector listed for the finger',
    'contact-geometry',
    'open',
    (d) => {
      d.features.connectors = []
    },
  ],
]
