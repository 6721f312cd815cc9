export { writeQuotationJson, writeQuotationXlsx } from './files'
export { makeQuotationRequest, QUOTATION_STATEMENT } from './make-request'
export { type QuotationRequest, quotationRequestSchema } from './schema'
export { listQuotationFacts, listQuotationTables, type QuotationTable, writeQuotationCell } from './tables'
