/** Permittivity of vacuum, F/m, and speed of light, m/s: CODATA 2018 and exact. */
export const VACUUM_PERMITTIVITY = 8.8541878128e-12
export const SPEED_OF_LIGHT = 299_792_458
export const VACUUM_IMPEDANCE_OHM = 1 / (VACUUM_PERMITTIVITY * SPEED_OF_LIGHT)
