/**
 * Coordinates are whole nanometres in 32 bits. Ours: no circuit is longer than 2 m, and what is lies beyond has been read in a wrong unit or format.
 */
export const LARGEST_COORDINATE_NM = 2_000_000_000
export const NM_PER_MM = 1_000_000
export const NM_PER_INCH = 25_400_000

/** Larger than any artwork file seen; the reader's memory grows with it. */
export const MOST_FILE_BYTES = 256 * 1024 * 1024

/**
 * Objects that repeats and blocks may unfold to: so many, and one more for each eighth byte of the file. An object takes some 45 bytes, so that
 * what a small file unfolds to stays below 100 MB.
 */
const MOST_UNFOLDED_OBJECTS = 1_500_000
export const mostObjectsOf = (fileBytes: number): number => MOST_UNFOLDED_OBJECTS + Math.floor(fileBytes / 8)
