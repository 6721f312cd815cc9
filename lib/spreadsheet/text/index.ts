/** What pages need of cells as text, without the readers and writers of files. */
export { readClipboard, writeClipboard } from './clipboard'
export { neutraliseText, readNeutralised } from './formula'
