/** The part of pdfkit that gathers a finished document; @types/pdfkit doesn't know it yet. */
declare module "pdfkit/output" {
  export function toBytes(document: PDFKit.PDFDocument): Promise<Uint8Array>;
}
