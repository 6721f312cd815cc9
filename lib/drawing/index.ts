export { drawCostOverQuantity, drawCostShares, type QuantityPoint } from './cost-plots'
export { drawCrossSection } from './cross-section'
export {
  cautionOfFlexTestSet,
  describeFlexTestSet,
  listFlexTestConditions,
  listFlexTestSpecimens,
} from './flex-test-tables'
export { describeFoldState, drawFolded, fillOfShape, listFoldedLegend } from './folded/folded-picture'
export { FOLDED_VIEWS, type FoldedViewName } from './folded/folded-view'
export { formatDesignation, nameConductorLayers } from './layer-designations'
export { formatTolerance, listLayerTable } from './layer-table'
export { drawLifePlot } from './life-plot'
export { drawCrosstalk, drawCrosstalkOverSpace, drawImpedanceOverCover, drawImpedanceOverWidth } from './line-plots'
export { drawLineSection } from './line-section-picture'
export { drawOutline } from './outline-picture'
export { PRINT_PALETTE, SCREEN_PALETTE } from './palette'
export { type LaidPanel, writePanelCsv, writePanelDxf, writePanelSvg } from './panel-files'
export { drawPanel } from './panel-picture'
export { drawPaperModel } from './paper-model/paper-model'
export { drawPartSection } from './part-section'
export { type DrawingNode, describePicture, type Picture, type PictureTable, toSvg } from './picture'
export { drawPlanPicture } from './plan/plan-picture'
export { makeProductMarkSvg, PRODUCT_MARK_PATHS, PRODUCT_MARK_SIZE } from './product-mark'
export {
  drawRemedyPlot,
  getEffectWord,
  listRemedyRows,
  REMEDY_EFFECTS,
  type RemedyEffect,
} from './remedy-plot'
export * from './sheet'
export { drawStatePlot } from './state-plot'
export { listStateFigures, listStateRows } from './state-table'
export { drawStrainPlot, listStrainRows } from './strain-plot'
export { drawThicknessHistogram } from './thickness-histogram'
export {
  drawTornadoPlot,
  type TornadoMeasure,
} from './tornado-plot'
export { drawWeibullPlot } from './weibull-plot'
