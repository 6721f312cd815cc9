import type { Material } from '../design/material'
import { makeMaterial } from './record'
import { ALLOWABLE, ANNEALED_COPPER, MEMORY, PLATED_COPPER } from './source-keys'

const MODULUS_NOTE =
  'Modulus: 110 GPa stands between bulk copper (117 to 130 GPa) and what tensile tests of foil give (60 to 110 GPa, large scatter, texture matters).'
const FATIGUE_NOTE =
  'Fatigue ductility is the true strain at fracture that the foil fatigue test yields; take it from the foil maker where it is known.'

/** Generic copper foils by the grades of IPC-4562 (Metal Foil for Printed Board Applications). */
export const FOILS: readonly Material[] = [
  makeMaterial({
    id: 'copper-ra',
    name: 'Rolled-annealed copper foil',
    kind: 'copper-foil',
    specification: 'IPC-4562 grade 7 (wrought, annealed)',
    modulusGpa: [110, MEMORY],
    poisson: [0.34, MEMORY],
    densityGPerCm3: [8.9, MEMORY],
    expansionPpmPerC: [17, MEMORY, 16.5, 17.7, MEMORY],
    foil: {
      type: 'rolled-annealed',
      yieldStrengthMpa: [80, MEMORY],
      tensileStrengthMpa: [172, MEMORY],
      fatigueDuctility: [0.65, MEMORY],
      allowableFoldOncePct: [16, ALLOWABLE],
      allowableInstallPct: [10, ALLOWABLE],
      resistivityOhmMm2PerM: [0.017241379, ANNEALED_COPPER],
    },
    note: `${MODULUS_NOTE} Yield after annealing 60 to 110 MPa, tensile strength 138 MPa (least) to 220 MPa. ${FATIGUE_NOTE} 0.65 is a low figure for annealed foil; 1.0 is met. Conductivity: 92 % IACS has been measured on a 12 um annealed foil, so resistance may be 8 % higher.`,
  }),
  makeMaterial({
    id: 'copper-ra-lta',
    name: 'Rolled copper foil, annealed in lamination',
    kind: 'copper-foil',
    specification: 'IPC-4562 grade 8 (wrought, low-temperature annealable)',
    modulusGpa: [110, MEMORY],
    poisson: [0.34, MEMORY],
    densityGPerCm3: [8.9, MEMORY],
    expansionPpmPerC: [17, MEMORY, 16.5, 17.7, MEMORY],
    foil: {
      type: 'rolled-annealed',
      yieldStrengthMpa: [95, MEMORY],
      tensileStrengthMpa: [180, MEMORY],
      fatigueDuctility: [0.65, MEMORY],
      allowableFoldOncePct: [16, ALLOWABLE],
      allowableInstallPct: [10, ALLOWABLE],
      resistivityOhmMm2PerM: [0.017241379, ANNEALED_COPPER],
    },
    note: `${MODULUS_NOTE} Figures are those after a lamination that anneals it; before, it is as-rolled foil of 400 MPa and more. Ask for evidence of the anneal. ${FATIGUE_NOTE}`,
  }),
  makeMaterial({
    id: 'copper-ed',
    name: 'Electrodeposited copper foil, standard',
    kind: 'copper-foil',
    specification: 'IPC-4562 grade 1 (electrodeposited, standard)',
    modulusGpa: [110, MEMORY],
    poisson: [0.34, MEMORY],
    densityGPerCm3: [8.9, MEMORY],
    expansionPpmPerC: [17, MEMORY, 16.5, 17.7, MEMORY],
    foil: {
      type: 'electrodeposited',
      yieldStrengthMpa: [210, MEMORY],
      tensileStrengthMpa: [310, MEMORY],
      fatigueDuctility: [0.25, MEMORY],
      allowableFoldOncePct: [11, ALLOWABLE],
      allowableInstallPct: null,
      resistivityOhmMm2PerM: [0.0178, MEMORY],
    },
    note: `${MODULUS_NOTE} Yield 150 to 280 MPa; the foil is bought by weight because its density varies. No published allowable for flexing to install was found. ${FATIGUE_NOTE}`,
  }),
  makeMaterial({
    id: 'copper-ed-hte',
    name: 'Electrodeposited copper foil, high-temperature elongation',
    kind: 'copper-foil',
    specification: 'IPC-4562 grade 3 (electrodeposited, high-temperature elongation)',
    modulusGpa: [110, MEMORY],
    poisson: [0.34, MEMORY],
    densityGPerCm3: [8.9, MEMORY],
    expansionPpmPerC: [17, MEMORY, 16.5, 17.7, MEMORY],
    foil: {
      type: 'electrodeposited',
      yieldStrengthMpa: [190, MEMORY],
      tensileStrengthMpa: [300, MEMORY],
      fatigueDuctility: [0.3, MEMORY],
      allowableFoldOncePct: [11, ALLOWABLE],
      allowableInstallPct: null,
      resistivityOhmMm2PerM: [0.0178, MEMORY],
    },
    note: `${MODULUS_NOTE} Elongation 4 to 15 % at room temperature. No published allowable for flexing to install was found. ${FATIGUE_NOTE}`,
  }),
  makeMaterial({
    id: 'copper-plated',
    name: 'Plated copper',
    kind: 'copper-foil',
    specification: 'Electrodeposited from a plating bath',
    modulusGpa: [82.7, PLATED_COPPER],
    poisson: [0.34, MEMORY],
    densityGPerCm3: [8.9, MEMORY],
    expansionPpmPerC: [17, MEMORY, 16.5, 17.7, MEMORY],
    foil: {
      type: 'plated',
      yieldStrengthMpa: [172, PLATED_COPPER],
      tensileStrengthMpa: [276, PLATED_COPPER],
      fatigueDuctility: [0.3, PLATED_COPPER],
      allowableFoldOncePct: null,
      allowableInstallPct: null,
      resistivityOhmMm2PerM: [0.0178, MEMORY],
    },
    note: 'Copper that panel, pattern or pads-only plating adds to a foil: 82.7 GPa up to yield, then 0.69 GPa. It differs with bath and current density: take ductility and strength from the plater.',
  }),
]
