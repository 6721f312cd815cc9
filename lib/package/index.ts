/** Release packages: built and signed here, verified here with neither server nor database. */
export { toPackageFiles } from './any-archive'
export { MAX_PACKAGE_BYTES, MAX_PACKAGE_FILES, readArchive, writeArchive } from './archive'
export { assemblePackage, buildPackage, makePackageParts, type PackageParts } from './build'
export {
  type CheckpointedTrail,
  type Checkpoints,
  checkCheckpoints,
  checkpointSchema,
  checkTrailWithCheckpoints,
  hashCheckpoint,
  makeCheckpoint,
  type TrailCheckpoint,
} from './checkpoints'
export type {
  PackageContent,
  PackageFile,
  PackedFlexTests,
  SigningKeys,
} from './content'
export type { DocumentOrder } from './document-order'
export {
  drawFileSheets,
  makeDrawingPdfIdentity,
  makeDrawingSource,
  type RevisionEntry,
  type SheetIdentity,
  writeSheetSvg,
} from './drawing'
export { writeDrawingPdf } from './drawing-pdf'
export type { DrawingSource } from './drawing-source'
export {
  endorseKey,
  isRegisterTrusted,
  type KeyEntry,
  type KeyRegister,
  makeKeyRegister,
  readKeyRegister,
} from './key-register'
export { makeMarkedCopy } from './marked-copy'
export {
  listQuotationFacts,
  listQuotationTables,
  makeQuotationRequest,
  type QuotationRequest,
  type QuotationTable,
  writeQuotationCell,
  writeQuotationJson,
  writeQuotationXlsx,
} from './quotation'
export { writeQuotationPdf } from './quotation-pdf'
export { listSignedParts, makeSignedPartFiles } from './signed-parts'
export { getKeyFingerprint, readVerifyingKey } from './signing'
export { type StampedRelease, signStatement } from './stamped-release'
export {
  describeEntry,
  judgeStatus,
  makeStatusList,
  type PackageStatus,
  readStatusList,
  type StatusEntry,
  type StatusList,
} from './status-list'
export { makeNonce, makeTimeStampQuery, readTimeStamp } from './time-stamp'
export { makeTrailFile, parseTrailFile, type TrailFile } from './trail-file'
export { writeTrailPdf } from './trail-pdf'
export { type PackageForm, type VerifiedPackage, verifyFiles, verifyPackage } from './verify'
