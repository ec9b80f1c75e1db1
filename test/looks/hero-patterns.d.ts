declare module 'hero-patterns' {
  /** Each pattern by its name: its `url('data:image/svg+xml,…')` in a colour and an opacity. */
  const patterns: Readonly<Record<string, (fill: string, opacity: number) => string>>
  export default patterns
}
