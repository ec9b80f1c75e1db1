/** The part of fontkit that is used here; the package brings no types. */
declare module 'fontkit' {
  export interface PathCommand {
    readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath'
    readonly args: readonly number[]
  }
  export interface FontGlyph {
    readonly advanceWidth: number
    readonly path: { readonly commands: readonly PathCommand[] }
  }
  export interface Font {
    readonly numGlyphs: number
    readonly characterSet: readonly number[]
    readonly getGlyph: (id: number) => FontGlyph
    readonly getVariation: (settings: Readonly<Record<string, number>>) => Font
  }
  export function create(file: Uint8Array): Font
}
