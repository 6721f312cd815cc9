/**
 * Keys of SOURCES that the library cites. Kept together, so that one look shows on what the constants rest.
 */
/** Recalled, not read: the note of each record gives the spread that is believed. */
export const MEMORY = 'materialConstantsRecalled'
/** Film maker's data as reproduced in a university laboratory's table. */
export const FILM_TABLE = 'polyimideFilmTable'
/** Expansion of polyimide films by grade, as a handbook is quoted. */
export const FILM_GRADES = 'filmExpansionGrades'
/** In-plane expansion of glass-reinforced boards, as a handbook's survey is quoted. */
export const BOARD_SURVEY = 'boardExpansionSurvey'
/** No source was found: the figure is a choice of ours. */
export const OWN_CHOICE = 'ownChoice'
/** Plated copper as two straight lines, quoted with the relation for plated holes. */
export const PLATED_COPPER = 'platedCopperLinearised'
/** A fabricator's table of dielectrics for flexible circuits. */
export const LAMINATE_TABLE = 'flexDielectricTable'
/** Allowable copper deformation by use, as reproduced from IPC-2223. */
export const ALLOWABLE = 'ipc2223'
/** International Annealed Copper Standard: 1/58 ohm mm2/m at 20 degC. */
export const ANNEALED_COPPER = 'iacs'
