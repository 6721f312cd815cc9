/** What the lines of a design come to beyond their verdicts: curves, losses, the share within a band. Asked for by a page, never by an evaluation. */
export { type LineStudy, listStudiedLines, type ModeLosses, type StudiedLine, studyLine } from './study'
